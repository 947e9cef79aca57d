import { describe, expect, it } from 'vitest';
import { cubeFormat } from '../../../../shared/check-values/cube-format.js';
import { InputError } from '../../../../src/errors/input-error.js';
import { readCube } from '../../../../src/lut/formats/cube/read.js';
import { writeCube } from '../../../../src/lut/formats/cube/write.js';
import type { CurveTable } from '../../../../src/lut/lattice.js';
import { sampleLattice } from '../../../../src/lut/lattice.js';

const identity = sampleLattice(() => undefined, 2);
const constant = (value: number) => sampleLattice((run) => void run.fill(value), 2);
const read = (text: string) => readCube(new TextEncoder().encode(text), 'written.cube');
const linesOf = (text: string) => text.split('\n');

describe('a written .cube file', () => {
  it('holds size and rows, red fastest, six decimals', () => {
    expect(writeCube(identity)).toBe(
      [
        'LUT_3D_SIZE 2',
        '0.000000 0.000000 0.000000',
        '1.000000 0.000000 0.000000',
        '0.000000 1.000000 0.000000',
        '1.000000 1.000000 0.000000',
        '0.000000 0.000000 1.000000',
        '1.000000 0.000000 1.000000',
        '0.000000 1.000000 1.000000',
        '1.000000 1.000000 1.000000',
        '',
      ].join('\n'),
    );
  });

  it.each(cubeFormat.files)(
    'of $size nodes a side has $rows rows and their $bytes bytes',
    ({ size, rows, bytes }) => {
      const text = writeCube(
        sampleLattice(() => undefined, size),
        { plain: true },
      );
      expect(text.length).toBe(bytes + `LUT_3D_SIZE ${size}\n`.length);
      expect(linesOf(text)).toHaveLength(rows + 2);
    },
  );

  it('may be a 1D LUT', () => {
    const curves: CurveTable = {
      kind: '1d',
      size: 2,
      domainMin: [0, 0, 0],
      domainMax: [1, 1, 1],
      values: Float64Array.of(0, 0.5, 1, 1, 0.25, -2),
    };
    expect(writeCube(curves)).toBe(
      'LUT_1D_SIZE 2\n0.000000 0.500000 1.000000\n1.000000 0.250000 -2.000000\n',
    );
  });

  it('opens with title, comments, size and, only when it is not 0 to 1, the domain', () => {
    const lattice = sampleLattice(() => undefined, 2, [-0.1, 0, 1e-7], [1.5, 1, 1 / 3]);
    const text = writeCube(lattice, {
      title: 'Attic reel',
      comments: [
        ['lamp', '3200 K'],
        ['stock', 'faded'],
      ],
    });
    expect(linesOf(text).slice(0, 6)).toEqual([
      'TITLE "Attic reel"',
      '# lamp: 3200 K',
      '# stock: faded',
      'LUT_3D_SIZE 2',
      'DOMAIN_MIN -0.1 0 1e-7',
      'DOMAIN_MAX 1.5 1 0.3333333333333333',
    ]);
    expect(read(text).lut).toMatchObject({ domainMin: lattice.domainMin, domainMax: lattice.domainMax });
  });

  it('is size and rows only when plain, and refuses to drop a domain', () => {
    const options = { title: 'Attic reel', comments: [['lamp', '3200 K']] as const, plain: true };
    expect(writeCube(identity, options)).toBe(writeCube(identity));
    expect(() =>
      writeCube(
        sampleLattice(() => undefined, 2, [-1, 0, 0]),
        options,
      ),
    ).toThrow(InputError);
  });

  it.each([-0, -1e-9, -4.9e-7])('never writes a negative nothing: %s', (value) => {
    expect(writeCube(constant(value))).not.toContain('-');
  });

  it.each([6, 8, 15])('keeps every value to %i decimals', (decimals) => {
    const value = 1 / 3 - 0.7;
    const written = read(writeCube(constant(value), { decimals })).lut.values[0];
    expect(Math.abs(written - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals);
  });

  it('keeps very large values', () => {
    expect(read(writeCube(constant(-1e30))).lut.values[0]).toBe(-1e30);
  });

  it.each([5, 16, 6.5, NaN])('refuses %s decimals', (decimals) => {
    expect(() => writeCube(identity, { decimals })).toThrow(RangeError);
  });

  it.each([NaN, Infinity, -Infinity])('refuses a table with %s', (value) => {
    expect(() => writeCube(constant(value))).toThrow(RangeError);
  });
});

describe('title and comments of a written file', () => {
  it.each([
    ['Zo\u00eb\u2019s \u201creel\u201d \u2013 1965', "Zoe's 'reel' - 1965"],
    ['two\r\nlines\tand \u0000\u001b[2J', 'two  lines and   [2J'],
    ['"quoted"', "'quoted'"],
    ['\u65e5\u672c \ud83c\udf9e', '?? ?'],
    ['  padded  ', 'padded'],
    ['Großvaters Smørrebrød, Łódź', 'Grossvaters Smorrebrod, Lodz'],
  ])('are plain ASCII: %j', (title, expected) => {
    const text = writeCube(identity, { title, comments: [['k:e\ny', title]] });
    expect(read(text).title).toBe(expected);
    expect(read(text).comments).toEqual([['k e y', expect.stringContaining(expected.slice(1, 5))]]);
    expect(text).toMatch(/^[\n -~]*$/);
    expect(read(text).notes).toEqual([]);
  });

  it('are left out when nothing is left of a title', () => {
    expect(writeCube(identity, { title: ' \n' })).toBe(writeCube(identity));
    expect(writeCube(identity, { comments: [] })).toBe(writeCube(identity));
  });

  it('a key loses its colons, in whatever form they come', () => {
    const comments = [['x\uff1a y: z', 'value']] as const;
    expect(read(writeCube(identity, { comments })).comments).toEqual([['x  y  z', 'value']]);
  });

  it('a comment without a key is a note', () => {
    expect(
      read(
        writeCube(identity, {
          comments: [
            [':', 'x'],
            ['empty', ''],
          ],
        }),
      ).comments,
    ).toEqual([
      ['note', 'x'],
      ['empty', ''],
    ]);
  });

  it('are cut so that no line is longer than the format allows', () => {
    const long = 'A very long name '.repeat(100_000);
    const text = writeCube(identity, { title: long, comments: [[long, long]] });
    const longest = Math.max(...linesOf(text).map((line) => line.length));
    expect(longest).toBeLessThanOrEqual(cubeFormat.lineBytes);
    expect(longest).toBeGreaterThan(cubeFormat.lineBytes - 20);
    expect(read(text).notes).toEqual([]);
    expect(read(text).title).toMatch(/^A very long name A/);
    expect(read(text).comments[0][1]).toMatch(/^A very long name A/);
  });
});
