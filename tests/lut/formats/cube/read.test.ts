import { describe, expect, it } from 'vitest';
import { cubeFormat } from '../../../../shared/check-values/cube-format.js';
import { createCubeReader, readCube } from '../../../../src/lut/formats/cube/read.js';

const encode = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readCube(encode(text), 'attic.cube');

const size = 'LUT_3D_SIZE 2\n';
const rowList = ['0 0 0', '1 0 0', '0 1 0', '1 1 0', '0 0 1', '1 0 1', '0 1 1', '1 1 1'];
const rows = `${rowList.join('\n')}\n`;
const identity = [0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0, 0, 0, 1, 1, 0, 1, 0, 1, 1, 1, 1, 1];

describe('a .cube file', () => {
  it('is read as the format has it: defaults, and red fastest', () => {
    const { lut, title, comments, notes } = read(size + rows);
    expect(lut).toEqual({
      kind: '3d',
      size: 2,
      domainMin: cubeFormat.defaultDomain.min,
      domainMax: cubeFormat.defaultDomain.max,
      values: Float64Array.from(identity),
    });
    expect([title, comments, notes]).toEqual([undefined, [], []]);
    const green = cubeFormat.row(0, 1, 0, 2);
    expect([...lut.values.subarray(3 * green, 3 * green + 3)]).toEqual([0, 1, 0]);
  });

  it('may be a 1D LUT', () => {
    const { lut } = read('LUT_1D_SIZE 3\n0 0 0\n.25 .5 .75\n1 1 1\n');
    expect(lut).toMatchObject({ kind: '1d', size: 3 });
    expect([...lut.values]).toEqual([0, 0, 0, 0.25, 0.5, 0.75, 1, 1, 1]);
  });

  it('gives title and paired comments, and leaves other comments', () => {
    const { title, comments, notes } = read(
      `# made at the harbour\n#reel: attic 7\nTITLE "Harbour \u00e5r 1965"\n${size}# lamp : tungsten: 3200 K\n#:\n# : x\n# http://a.b\n# key:\n${rows}`,
    );
    expect(title).toBe('Harbour \u00e5r 1965');
    expect(comments).toEqual([
      ['reel', 'attic 7'],
      ['lamp', 'tungsten: 3200 K'],
      ['key', ''],
    ]);
    expect(notes).toEqual([]);
  });

  it('keeps a domain for each channel, whatever the order of the keywords, with a note', () => {
    const { lut, notes } = read(`DOMAIN_MAX 2 +1e0 .5\nTITLE ""\n${size}DOMAIN_MIN -1 0 -0.25\n${rows}`);
    expect([lut.domainMin, lut.domainMax]).toEqual([
      [-1, 0, -0.25],
      [2, 1, 0.5],
    ]);
    expect(notes).toEqual(['Its domain is not 0 to 1; some readers ignore that, and show other colours.']);
  });

  it('may state the default domain without a note', () => {
    expect(read(`DOMAIN_MIN 0.0 0 0\nDOMAIN_MAX 1 1.0 1e0\n${size}${rows}`).notes).toEqual([]);
  });

  it('may hold values beyond 0..1', () => {
    expect(read(`LUT_1D_SIZE 2\n-0.5 -1e30 0\n1e30 65535 1.5\n`).lut.values[3]).toBe(1e30);
  });

  it.each([
    ['CR LF', (size + rows).replaceAll('\n', '\r\n')],
    ['no line end at the end', (size + rows).trimEnd()],
    ['tabs and several blanks', size.replace(' ', '\t ') + rows.replaceAll(' ', ' \t ')],
    ['blanks at line ends', (size + rows).replaceAll('\n', ' \t\n')],
    ['exponents and a leading plus', size + rows.replace(/[01]/g, (digit) => `+${digit}.0E+00`)],
    ['blank lines and comments before and after the table', `\n${size} \n#\n${rows}\n# end\n\n`],
    ['lines of 250 bytes', `${size.trimEnd()}${' '.repeat(237)}\n${rows}#${'x'.repeat(249)}\n`],
    ['a size with a plus and zeros', `LUT_3D_SIZE +02\n${rows}`],
  ])('is read without a note with %s', (_, text) => {
    const { lut, notes } = read(text);
    expect([...lut.values]).toEqual(identity);
    expect(notes).toEqual([]);
  });

  it.each([
    ['a byte-order mark', `\ufeff${size}${rows}`, /^Line 1 begins with a byte-order mark/],
    ['small letters', size.toLowerCase() + rows, /^Line 1 has the keyword LUT_3D_SIZE in small letters/],
    ['CR alone', (size + rows).replaceAll('\n', '\r'), /^Line 1 ends in CR alone/],
    ['one CR alone at the end', (size + rows).replace(/\n$/, '\r'), /^Line 9 ends in CR alone/],
    ['blanks before a row', size + rows.replace('1 1 0', '  1 1 0'), /^Line 5 begins with blanks/],
    [
      'a comment in the table',
      size + rows.replace('1 1 0', '# here\n1 1 0'),
      /^Line 6 goes on with the table/,
    ],
    ['a blank line in the table', size + rows.replace('1 1 0', '\n1 1 0'), /^Line 6 goes on with the table/],
    ['a long comment', `#${'x'.repeat(250)}\n${size}${rows}`, /^Line 1 is longer than the 250 bytes/],
    ['a long title', `${size}TITLE "${'x'.repeat(300)}"\n${rows}`, /^Line 2 is longer than the 250 bytes/],
    ['the longest comment', `#${'x'.repeat(4095)}\n${size}${rows}`, /^Line 1 is longer than the 250 bytes/],
  ])('is read with one note with %s', (_, text, note) => {
    const { lut, notes } = read(text);
    expect([...lut.values]).toEqual(identity);
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(note);
  });

  it('notes an oddity once, where it was met first', () => {
    expect(read(size + rows.replaceAll('1 ', ' 1 ').replaceAll('0 0 0', ' 0 0 0')).notes).toHaveLength(1);
  });

  it('notes a size beyond what common readers take', () => {
    const table = (n: number) => `LUT_3D_SIZE ${n}\n${'0 0 0\n'.repeat(n ** 3)}`;
    expect(read(table(129)).notes).toEqual([]);
    expect(read(table(130)).notes).toEqual(['Its size is 130; common readers stop at 129.']);
  });

  it('takes an old title that is not UTF-8 for Latin-1, and shows no control characters', () => {
    const bytes = Uint8Array.from(`TITLE "\xe5r \x9b2J"\n${size}${rows}`, (character) =>
      character.charCodeAt(0),
    );
    expect(readCube(bytes, 'attic.cube').title).toBe('\u00e5r \ufffd2J');
    expect(read(`TITLE "a\tb\u202ec"\n${size}${rows}`).title).toBe('a b\ufffdc');
  });

  it.each([1, 2, 3, 7, 64])('is the same file in pieces of %i bytes', (length) => {
    const text = `\ufeff# reel: attic\r\ntitle "\u00e5r"\r${size}${rows.replaceAll('\n', '\r\n')}`;
    const bytes = encode(text);
    const reader = createCubeReader('attic.cube');
    for (let at = 0; at < bytes.length; at += length) {
      reader.write(bytes.slice(at, at + length));
      reader.write(new Uint8Array(0));
    }
    expect(reader.end()).toEqual(read(text));
  });
});
