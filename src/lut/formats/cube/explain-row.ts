import type { Problem } from '../../../errors/input-error.js';
import { quoted } from './text.js';

/** What is wrong, without its place. */
export type Fault = Pick<Problem, 'what' | 'allowed' | 'hint'>;

const decimalNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const notFinite = /^[+-]?((nan|inf|infinity)\b|\d+\.?#)/i;
const hexadecimal = /^[+-]?0x/i;

/** Words of a line, between blanks and tabs. */
export const words = (line: string): string[] => line.split(/[ \t]+/).filter((word) => word !== '');

/** A text without blanks and tabs at its ends; other white space stays and is judged. */
export const trimBlanks = (text: string): string => text.replace(/^[ \t]+/, '').replace(/[ \t]+$/, '');

/** Whether a word is meant as a number that is none: NaN and infinity, as programs write them. */
export const isNotFinite = (word: string): boolean => notFinite.test(word);

/** What is wrong with a word that should be a number; undefined when nothing is. */
function wordFault(word: string): Fault | undefined {
  if (decimalNumber.test(word)) {
    if (Number.isFinite(Number(word))) return undefined;
    return { what: `${quoted(word)} is too large for a number` };
  }
  if (word.includes(','))
    return {
      what: `${quoted(word)} has a comma`,
      hint: 'Write numbers with a decimal point and blanks between them.',
    };
  if (isNotFinite(word)) return { what: `${quoted(word)} is not a finite number` };
  if (hexadecimal.test(word)) return { what: `${quoted(word)} is hexadecimal`, allowed: 'decimal numbers' };
  return { what: `${quoted(word)} is not a number` };
}

/** Why some words are not three finite numbers, or undefined when they are. */
export function tripleFault(given: readonly string[], of: string): Fault | undefined {
  for (const word of given.slice(0, 4)) {
    const fault = wordFault(word);
    if (fault) return fault;
  }
  if (given.length === 3) return undefined;
  const count = given.length === 1 ? '1 number' : `${given.length} numbers`;
  return { what: `${of} has ${count}`, allowed: 'three numbers, red green blue' };
}
