const blank = /[ \t\n\r]*/y;
const plainValue = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const escape = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;

/** Where a pattern that begins at a position ends, or undefined when it is not there. */
function endOf(pattern: RegExp, text: string, at: number): number | undefined {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : undefined;
}

interface Scan {
  readonly at: number;
  /** Whether what stands at `at` cannot stand there. */
  readonly fault: boolean;
}

/** Reads a JSON string from its opening quote: to behind the closing one, or to what cannot stand in it. */
export function scanString(text: string, from: number): Scan {
  if (text[from] !== '"') return { at: from, fault: true };
  for (let at = from + 1; at < text.length;) {
    if (text[at] === '"') return { at: at + 1, fault: false };
    const next = text[at] === '\\' ? endOf(escape, text, at) : text[at] < ' ' ? undefined : at + 1;
    if (next === undefined) return { at, fault: true };
    at = next;
  }
  return { at: text.length, fault: true };
}

function scanValue(text: string, from: number): Scan {
  if (text[from] === '"') return scanString(text, from);
  const end = endOf(plainValue, text, from);
  return { at: end ?? from, fault: end === undefined };
}

type Expected = 'value' | 'value or end' | 'name' | 'name or end' | 'colon' | 'comma or end';

/**
 * Finds where a text stops being JSON (RFC 8259). The engines' own messages say it each in its way, or not at all.
 * @returns position of the first character that cannot stand there, the text's length when it ends too early,
 *   undefined when the text is JSON
 */
export function jsonFault(text: string): number | undefined {
  /** The closing brackets to come. */
  const closing: ('}' | ']')[] = [];
  let expected: Expected = 'value';
  for (let at = 0; ;) {
    at = endOf(blank, text, at) ?? at;
    const sign = text[at];
    if (sign === undefined)
      return expected === 'comma or end' && closing.length === 0 ? undefined : text.length;
    const mayEnd: boolean = expected.endsWith('or end') && closing.length > 0;
    if (mayEnd && sign === closing[closing.length - 1]) {
      closing.pop();
      expected = 'comma or end';
      at++;
    } else if (expected === 'comma or end' || expected === 'colon') {
      if (sign !== (expected === 'colon' ? ':' : ',') || closing.length === 0) return at;
      expected = expected === 'comma or end' && closing[closing.length - 1] === '}' ? 'name' : 'value';
      at++;
    } else if (expected.startsWith('value') && (sign === '{' || sign === '[')) {
      closing.push(sign === '{' ? '}' : ']');
      expected = sign === '{' ? 'name or end' : 'value or end';
      at++;
    } else {
      const isName: boolean = expected.startsWith('name');
      const scan: Scan = isName ? scanString(text, at) : scanValue(text, at);
      if (scan.fault) return scan.at;
      expected = isName ? 'colon' : 'comma or end';
      at = scan.at;
    }
  }
}
