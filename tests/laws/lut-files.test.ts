import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createCubeReader, readCube } from '../../src/lut/formats/cube/read.js';
import { writeCube } from '../../src/lut/formats/cube/write.js';
import type { Lut } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';

const seed = 19530306;
const encode = (text: string) => new TextEncoder().encode(text);
const read = (text: string) => readCube(encode(text), 'law.cube');

const bound = fc.tuple(
  fc.double({ min: -10, max: 0, noNaN: true }),
  fc.double({ min: 0.001, max: 10, noNaN: true }),
);

/** Any LUT whose values have six decimals. */
const lut = fc
  .record({
    kind: fc.constantFrom('1d', '3d'),
    size: fc.integer({ min: 2, max: 7 }),
    domain: fc.option(fc.tuple(bound, bound, bound), { nil: undefined }),
    values: fc.nat(),
  })
  .map(
    ({
      kind,
      size,
      domain = [
        [0, 1],
        [0, 1],
        [0, 1],
      ],
      values,
    }): Lut => {
      const random = seededRandom(values);
      const [r, g, b] = domain;
      return {
        kind,
        size,
        // Adding 0 turns a negative nothing, which no file keeps, into nothing.
        domainMin: [r[0] + 0, g[0] + 0, b[0] + 0],
        domainMax: [r[1], g[1], b[1]],
        values: Float64Array.from(
          { length: 3 * (kind === '3d' ? size ** 3 : size) },
          () => Math.round(4e6 * random() - 1e6) / 1e6 + 0,
        ),
      };
    },
  );

const anyText = fc.oneof(
  fc.string({ maxLength: 400 }),
  fc.string({ unit: 'binary', maxLength: 400 }),
  fc.string({ unit: 'grapheme', maxLength: 300 }),
  fc.constantFrom('"', ': ', '# x', 'TITLE "x"', '\n0 0 0\n', '\r', '\u2028', '\ud800', 'a'.repeat(300)),
);

const holds = <T extends [unknown, ...unknown[]]>(property: fc.IProperty<T>, numRuns = 500) =>
  fc.assert(property, { seed, numRuns });

describe('a .cube file', () => {
  it('read after it was written is the same LUT', () => {
    holds(fc.property(lut, (given) => void expect(read(writeCube(given)).lut).toEqual(given)));
  });

  it('carries every double when decimals allow it', () => {
    holds(
      fc.property(lut, fc.integer({ min: 6, max: 15 }), (given, decimals) => {
        const exact = { ...given, values: given.values.map((value) => value / 3) };
        const back = read(writeCube(exact, { decimals })).lut.values;
        back.forEach((value, i) =>
          expect(Math.abs(value - exact.values[i])).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-15),
        );
      }),
    );
  });

  it('is a good file whatever its title and comments are', () => {
    holds(
      fc.property(
        lut,
        anyText,
        fc.array(fc.tuple(anyText, anyText), { maxLength: 5 }),
        (given, title, comments) => {
          const text = writeCube(given, { title, comments });
          expect(text).toMatch(/^[\n -~]*$/);
          expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(250);
          const file = read(text);
          expect(file.lut).toEqual(given);
          expect(file.comments).toHaveLength(comments.length);
          expect(file.notes.filter((note) => !note.startsWith('Its domain'))).toEqual([]);
          // What was cleaned once is clean.
          expect(writeCube(given, { title: file.title, comments: file.comments })).toBe(text);
        },
      ),
    );
  });

  it('is the same in whatever pieces it comes', () => {
    holds(
      fc.property(
        lut,
        fc.constantFrom('\n', '\r\n', '\r'),
        fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1 }),
        (given, end, pieces) => {
          const bytes = encode(
            writeCube(given, { title: 'Regatta', comments: [['lamp', '3200 K']] }).replaceAll('\n', end),
          );
          const reader = createCubeReader('law.cube');
          for (let at = 0, i = 0; at < bytes.length; i++) {
            const length = pieces[i % pieces.length];
            reader.write(bytes.slice(at, at + length));
            at += length;
          }
          expect(reader.end()).toEqual(readCube(bytes, 'law.cube'));
        },
      ),
    );
  });
});
