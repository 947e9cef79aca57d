import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sentence } from '../../src/errors/sentence.js';
import { readCube } from '../../src/lut/formats/cube/read.js';

const folder = join(import.meta.dirname, 'files');

/** The line that must be named, and what must be said of it. */
const saidOfFiles: Record<string, [line: number, said: RegExp]> = {
  'a-look': [1, /"\{" is not a keyword/],
  'a-web-page': [1, /"<!DOCTYPE" is not a keyword/],
  'beyond-a-double': [7, /"1e400" is too large/],
  'both-sizes': [2, /second size follows LUT_1D_SIZE/],
  'comma-separated': [4, /"0\.0," has a comma.*decimal point/],
  'comment-after-row': [8, /"#" is not a number/],
  'comment-of-4097-bytes': [1, /longer than 4096 bytes/],
  'decimal-comma': [4, /"0,0" has a comma.*decimal point/],
  'domain-above-its-default-end': [3, /domain goes from 0 2 0 to 1 1 1/],
  'domain-empty': [2, /domain goes from 0 0\.5 0 to 1 0\.5 1/],
  'domain-reversed': [2, /domain goes from 1 1 1 to 0 0 0.*below/],
  'domain-too-wide': [2, /domain goes from -1e\+308 0 0 to 1e\+308 1 1/],
  'domain-two-numbers': [1, /DOMAIN_MIN has 2 numbers\. Allowed: three numbers/],
  empty: [1, /the file is empty/],
  'four-columns': [5, /the row has 4 numbers/],
  hexadecimal: [6, /"0x0" is hexadecimal/],
  infinity: [7, /"-inf" is not a finite number/],
  'infinity-of-a-program': [7, /"1\.#INF" is not a finite number/],
  'keyword-after-table': [10, /TITLE stands after the table has begun/],
  'keyword-amid-table': [6, /DOMAIN_MIN stands after the table has begun/],
  'keyword-of-251-bytes': [1, /longer than 250 bytes/],
  'keyword-of-another-program': [1, /"LUT_3D_INPUT_RANGE" is not a keyword.*TITLE, LUT_1D_SIZE/],
  'keyword-twice': [2, /TITLE stands here a second time/],
  'keyword-unknown': [2, /"LUT_3D_SIZ" is not a keyword.*Did you mean LUT_3D_SIZE\?/],
  'no-size': [2, /no size stands before the table/],
  'not-a-number': [6, /"NaN" is not a finite number/],
  'not-a-number-first': [6, /"nan" is not a finite number/],
  'only-comments': [3, /no size stands before the table/],
  'only-size': [1, /ends after 0 of 8 rows/],
  'row-before-size': [1, /no size stands before the table/],
  'row-missing': [8, /ends after 7 of 8 rows \(2 x 2 x 2\)/],
  'row-of-251-bytes': [9, /longer than 250 bytes/],
  'row-too-many': [10, /too many rows\. Allowed: 8 rows/],
  'size-1d-too-large': [1, /"65537" is not a size of a 1D LUT\. Allowed: whole numbers from 2 to 65536/],
  'size-3d-too-large': [1, /"257" is not a size of a 3D LUT\. Allowed: whole numbers from 2 to 256/],
  'size-missing': [1, /the size is missing/],
  'size-negative': [1, /"-2" is not a size/],
  'size-of-a-million': [1, /"1000000" is not a size/],
  'size-one': [1, /"1" is not a size/],
  'size-twice': [2, /LUT_3D_SIZE stands here a second time/],
  'size-two-numbers': [1, /"2 2" is not a size/],
  'size-with-a-point': [1, /"2\.0" is not a size/],
  'title-half-quoted': [1, /title does not stand between two double quotes/],
  'title-with-more-behind': [1, /title does not stand between two double quotes/],
  'title-without-quotes': [1, /title does not stand between two double quotes/],
  'trailing-junk': [8, /"1\.0f" is not a number/],
  'two-columns': [5, /the row has 2 numbers/],
  'word-for-a-row': [8, /"zero" is not a keyword/],
};

const size = 'LUT_3D_SIZE 2\n';

/** Bytes that a text file in a repository would not keep. */
const saidOfBytes: [name: string, bytes: Uint8Array | string, line: number, said: RegExp][] = [
  ['a NUL in a row', `${size}0 0 0\n1 0\0 0\n`, 3, /byte 4 of the line is no text/],
  ['a NUL in a comment', '# a\0b\n', 1, /byte 3 of the line is no text/],
  ['a NUL in a keyword', 'LUT_3D\0_SIZE 2\n', 1, /no text/],
  ['nothing but NULs', new Uint8Array(1000), 1, /no text/],
  ['an escape in a title', 'TITLE "\u001b[2J"\n', 1, /no text/],
  ['a picture', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0), 1, /".PNG" is not a keyword/],
  ['UTF-16, small end first', Uint8Array.of(0xff, 0xfe, 0x4c, 0, 0x55, 0, 10, 0), 1, /UTF-16.*plain text/],
  ['UTF-16, big end first', Uint8Array.of(0xfe, 0xff, 0, 0x4c, 0, 0x55, 0, 10), 1, /UTF-16/],
  ['a byte-order mark amid the file', `${size}\ufeff0 0 0\n`, 2, /is not a keyword/],
  ['blanks without end', `${size}${' '.repeat(251)}\n`, 2, /longer than 250 bytes/],
  ['only a line feed', '\n', 1, /no size/],
  ['an arabic digit', `${size}0 0 \u0661\n`, 2, /is not a number/],
  ['no-break blanks', `${size}0\u00a00\u00a00\n`, 2, /is not a number/],
  ['faults counted over CR LF', '# a\r\n\r\nLUT_3D_SIZE x\r\n', 3, /"x" is not a size/],
  ['faults counted over CR', '# a\r\rLUT_3D_SIZE x\r', 3, /"x" is not a size/],
  ['a very long word', `${size}${'9'.repeat(60)}x 0 0\n`, 2, /"9{40}\.\.\." is not a number/],
];

function refusal(bytes: Uint8Array): InputError {
  try {
    readCube(bytes, 'attic.cube');
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return error as InputError;
  }
  throw new Error('the file was read');
}

function expectSaid(bytes: Uint8Array, line: number, said: RegExp): void {
  const { problems } = refusal(bytes);
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatchObject({ file: 'attic.cube', line });
  expect(sentence(problems[0])).toMatch(said);
  expect(sentence(problems[0])).toMatch(/^[\P{Cc}]+$/u);
}

describe('a broken .cube file', () => {
  it('is here for every fault, and every file is broken', () => {
    const files = readdirSync(folder).filter((name) => name.endsWith('.cube'));
    expect(files.sort()).toEqual(
      Object.keys(saidOfFiles)
        .map((name) => `${name}.cube`)
        .sort(),
    );
  });

  it.each(Object.entries(saidOfFiles))('%s is refused with its line', (name, [line, said]) => {
    expectSaid(readFileSync(join(folder, `${name}.cube`)), line, said);
  });

  it.each(saidOfBytes)('with %s is refused with its line', (_, bytes, line, said) => {
    expectSaid(typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes, line, said);
  });
});
