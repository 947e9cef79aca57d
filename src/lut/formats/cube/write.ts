import { InputError } from '../../../errors/input-error.js';
import { isUnitDomain, type Lut } from '../../lattice.js';
import { decimalRows } from '../decimal-rows.js';
import type { WriteOptions } from '../lut-format.js';
import { limits } from '../limits.js';
import { asciiText, latinText } from './text.js';

/**
 * A LUT as the bytes of a .cube file (Cube LUT Specification 1.0, 2013): ASCII, lines of 250 bytes at most that
 * end in LF, red fastest. Title and comments are cleaned and cut to fit.
 * @throws InputError when a plain file would have to carry a domain other than 0..1
 * @throws RangeError for a table with a value that is not finite, and for decimals beyond 6..15
 */
export function writeCubeBytes(lut: Lut, options: WriteOptions = {}): Uint8Array {
  const decimals = options.decimals ?? limits.decimals.least;
  if (!(Number.isInteger(decimals) && decimals >= limits.decimals.least && decimals <= limits.decimals.most))
    throw new RangeError(`${decimals} decimals, not ${limits.decimals.least} to ${limits.decimals.most}`);
  const head = headerLines(lut, options).map((line) => `${line}\n`);
  return decimalRows(lut.values, decimals, head.join(''));
}

/**
 * The same as text.
 * @throws RangeError also for more text than a string holds: 256 nodes a side fit with six decimals
 */
export function writeCube(lut: Lut, options: WriteOptions = {}): string {
  return latinText(writeCubeBytes(lut, options));
}

function headerLines(lut: Lut, { title, comments = [], plain = false }: WriteOptions): string[] {
  const size = `LUT_${lut.kind.toUpperCase()}_SIZE ${lut.size}`;
  const domain = [`DOMAIN_MIN ${lut.domainMin.join(' ')}`, `DOMAIN_MAX ${lut.domainMax.join(' ')}`];
  if (isUnitDomain(lut)) domain.length = 0;
  if (!plain) return [...titleLines(title), ...comments.map(commentLine), size, ...domain];
  if (domain.length > 0)
    throw new InputError({
      what: 'a plain file cannot say that its domain is not 0 to 1',
      hint: 'Write it without plain, or on a domain from 0 to 1.',
    });
  return [size];
}

const titleLine = (text: string) => `TITLE "${text}"`;

/** A title as the file holds it: ASCII, single quotes for double ones, cut to fit its line. */
export function cubeTitle(title: string): string {
  const longest = limits.lineBytes - titleLine('').length;
  return asciiText(title).replaceAll('"', "'").slice(0, longest).trim();
}

function titleLines(title = ''): string[] {
  const text = cubeTitle(title);
  return text === '' ? [] : [titleLine(text)];
}

/** `# key: value`; a key has no colon of its own, so that the pair can be found again. */
function commentLine([key, value]: readonly [string, string]): string {
  const cleanKey = asciiText(key).replaceAll(':', ' ').trim().slice(0, longestKey).trim() || 'note';
  return `# ${cleanKey}: ${asciiText(value)}`.slice(0, limits.lineBytes).trim();
}

/** Leaves most of a line to the value. */
const longestKey = 60;
