import { limits } from '../limits.js';

/** What typing programs put in place of plain signs, and letters that are more than a letter with an accent. */
const plainSigns: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2015\u2212]/g, '-'],
  [/[\u2018\u2019]/g, "'"],
  [/[\u201c\u201d]/g, '"'],
  // As Unicode's transliteration Latin-ASCII has them (CLDR, from memory).
  [/ß/g, 'ss'],
  [/ẞ/g, 'SS'],
  [/æ/g, 'ae'],
  [/Æ/g, 'AE'],
  [/œ/g, 'oe'],
  [/Œ/g, 'OE'],
  [/ø/g, 'o'],
  [/Ø/g, 'O'],
  [/ł/g, 'l'],
  [/Ł/g, 'L'],
  [/[đð]/g, 'd'],
  [/[ĐÐ]/g, 'D'],
  [/þ/g, 'th'],
  [/Þ/g, 'TH'],
  [/ı/g, 'i'],
];

/** A text in printable ASCII: accents dropped, line breaks as blanks, what has no ASCII form as a question mark. */
export function asciiText(text: string): string {
  let plain = text
    .slice(0, 4 * limits.lineBytes)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '');
  for (const [sign, ascii] of plainSigns) plain = plain.replace(sign, ascii);
  return plain
    .replace(/[\p{Cc}\p{Z}]/gu, ' ')
    .replace(/[^ -~]/gu, '?')
    .trim();
}

/** A text from a file with nothing in it that could move a terminal's cursor or turn its writing round. */
export function printable(text: string): string {
  return text
    .replaceAll('\t', ' ')
    .replace(/[\p{Cc}\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/gu, '\ufffd');
}

/** A word of the file for a message: printable and short. */
export function quoted(word: string): string {
  const shown = printable(word);
  return shown.length > 40 ? `"${shown.slice(0, 40)}..."` : `"${shown}"`;
}

/** Bytes one by one as characters 0..255. */
export function latinText(bytes: Uint8Array, start = 0, end = bytes.length): string {
  const parts: string[] = [];
  for (let at = start; at < end; at += bytesAtOnce)
    parts.push(textOf(bytes.subarray(at, Math.min(end, at + bytesAtOnce))));
  return parts.join('');
}

/** Given as they are, bytes need no list made of them. */
const textOf = (bytes: Uint8Array): string => String.fromCharCode.apply(null, bytes as unknown as number[]);

/** As many arguments as any machine takes in one call. */
const bytesAtOnce = 4096;

/** An ASCII text as bytes. */
export function asciiBytes(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** Bytes as UTF-8; undefined when they are not. Meant for single lines. */
export function utf8Text(bytes: Uint8Array, start: number, end: number): string | undefined {
  let escaped = '';
  for (let i = start; i < end; i++) escaped += `%${bytes[i].toString(16).padStart(2, '0')}`;
  try {
    return decodeURIComponent(escaped);
  } catch {
    return undefined;
  }
}

const tab = 9;
const blank = 32;
export const isBlank = (byte: number): boolean => byte === blank || byte === tab;

/** A byte that no text has: a control character other than the tab. Line ends are gone by then. */
export const isControl = (byte: number): boolean => (byte < blank && byte !== tab) || byte === 0x7f;
