import type { Run, Triple } from '../../../maths/matrix3.js';
import type { Lut } from '../../lattice.js';
import { scanNumber } from '../cube/number.js';
import type { Element, Refuse } from './xml.js';

/** One process node as a function on normalised values: codes over the last code of their depth. */
export interface Step {
  readonly run: Run;
  /** True when every channel goes by itself. */
  readonly separable: boolean;
  /** Present when the node is nothing but a table. */
  readonly lut?: Lut;
  /** What is lost when only the table is taken; a whole sentence. */
  readonly note?: string;
  /** Present when the node is nothing but scale x + offset, channel by channel, the ends of 0..1 held or not. */
  readonly affine?: { readonly scale: Triple; readonly offset: Triple };
}

/** A process node that is being read. */
export interface NodeSource {
  readonly bytes: Uint8Array;
  readonly element: Element;
  readonly refuse: Refuse;
  /** What a value of the file is divided by to be normalised, on either side of the node. */
  readonly inScale: number;
  readonly outScale: number;
}

/** Makes a step of a node. @throws InputError, by way of `refuse` */
export type NodeKind = (source: NodeSource) => Step;

/** Last codes of the bit depths a node may name; 1 for the floating ones. S-2014-006 (CLF v3.0). */
export const bitDepths = {
  '8i': 255,
  '10i': 1023,
  '12i': 4095,
  '16i': 65535,
  '16f': 1,
  '32f': 1,
} as const satisfies Record<string, number>;

/** Child elements by name. */
export const childrenOf = (element: Element, name: string): Element[] =>
  element.children.filter((child) => child.name === name);

export function onlyChild({ element, refuse }: NodeSource, name: string): Element {
  const found = childrenOf(element, name);
  return found.length === 1
    ? found[0]
    : refuse(element.at, `${element.name} needs one ${name}, and has ${found.length}`);
}

/** The whole numbers of an Array's `dim`. */
export function dimensions({ refuse }: NodeSource, array: Element): number[] {
  const dim = array.attributes.get('dim') ?? refuse(array.at, 'the Array says no dim');
  const numbers = dim.trim().split(/\s+/).map(Number);
  if (numbers.length > 4 || !numbers.every((n) => Number.isInteger(n) && n > 0 && n <= 65536))
    return refuse(array.at, 'the dim of the Array cannot be used');
  return numbers;
}

/**
 * The numbers of an element, exactly as many as expected. Room is taken for what the text can hold, never for what is
 * claimed.
 */
export function numbersOf({ bytes, refuse }: NodeSource, element: Element, expected: number): Float64Array {
  const length = element.text.reduce((sum, { start, end }) => sum + end - start, 0);
  const values = new Float64Array(Math.min(expected, Math.ceil(length / 2) + 1));
  let count = 0;
  for (const { start, end } of element.text) {
    const line = bytes.slice(start, end);
    for (let i = 0; i < line.length; i++)
      if (line[i] === lineFeed || line[i] === carriageReturn) line[i] = blank;
    const cursor = { at: 0 };
    for (;;) {
      while (cursor.at < line.length && (line[cursor.at] === blank || line[cursor.at] === tab)) cursor.at++;
      if (cursor.at === line.length) break;
      const from = start + cursor.at;
      if (count === expected) refuse(from, `${element.name} holds more than ${expected} numbers`);
      const value = scanNumber(line, cursor, line.length);
      if (!Number.isFinite(value)) refuse(from, `${element.name} holds what is not a finite number`);
      values[count++] = value;
    }
  }
  if (count < expected) refuse(element.at, `${element.name} holds ${count} of ${expected} numbers`);
  return values;
}

const [tab, lineFeed, carriageReturn, blank] = [9, 10, 13, 32];
