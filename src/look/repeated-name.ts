import { scanString } from './json-fault.js';

/** A name that stands twice in one object, and where its two quotes open. */
export interface RepeatedName {
  readonly name: string;
  readonly first: number;
  readonly again: number;
}

const colonNext = /[ \t\n\r]*:/y;

/** What lies deeper is no part of any look, and is not looked at. */
const deepest = 16;

/**
 * Finds the first name that an object has twice: a parser keeps the last of them without a word (RFC 8259, section 4).
 * @param text valid JSON
 */
export function repeatedName(text: string): RepeatedName | undefined {
  /** Names so far and where they stand, of every bracket that is open. */
  const open: Map<string, number>[] = [];
  let depth = 0;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (sign === '{' || sign === '[') {
      if (depth < deepest) open[depth] = new Map();
      depth++;
    } else if (sign === '}' || sign === ']') depth--;
    else if (sign === '"') {
      const end = (colonNext.lastIndex = scanString(text, at).at);
      if (depth <= deepest && colonNext.test(text)) {
        const name = JSON.parse(text.slice(at, end)) as string;
        const first = open[depth - 1].get(name);
        if (first !== undefined) return { name, first, again: at };
        open[depth - 1].set(name, at);
      }
      at = end - 1;
    }
  }
  return undefined;
}
