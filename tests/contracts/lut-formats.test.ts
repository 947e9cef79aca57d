import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubeFormat } from '../../shared/check-values/cube-format.js';
import { InputError } from '../../src/errors/input-error.js';
import { lutFormatOf, lutFormats } from '../../src/lut/formats/index.js';
import { limits } from '../../src/lut/formats/limits.js';
import type { LutFormat } from '../../src/lut/formats/lut-format.js';
import type { CurveTable, Lut } from '../../src/lut/lattice.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';

/** Half of the last of six decimals, and the rounding of a double. */
const sixDecimals = 0.5e-6 + 1e-12;

const seed = 19720808;
const random = seededRandom(seed);
const noise = (run: Float64Array) => void run.forEach((_, i) => (run[i] = 3 * random() - 1));

const curves: CurveTable = {
  kind: '1d',
  size: 1024,
  domainMin: [0, 0, 0],
  domainMax: [1, 1, 1],
  values: Float64Array.from({ length: 3072 }, () => 2 * random() - 0.5),
};

const luts: [string, Lut][] = [
  ['2 nodes a side', sampleLattice(noise, 2)],
  ['17 nodes a side', sampleLattice(noise, 17)],
  ['33 nodes a side', sampleLattice(noise, 33)],
  ['65 nodes a side', sampleLattice(noise, 65)],
  ['a domain of its own for each channel', sampleLattice(noise, 5, [-1, 0, 0.1], [2, 0.5, 1.1])],
  ['curves', curves],
  ['the longest curves', { ...curves, size: 65536, values: new Float64Array(3 * 65536).fill(0.25) }],
];

function read(format: LutFormat, bytes: Uint8Array) {
  const reader = format.createReader('test');
  reader.write(bytes);
  return reader.end();
}

const encode = (text: string) => new TextEncoder().encode(text);

/** Whatever a reader says of bytes, it says with an InputError. */
function readsOrRefuses(format: LutFormat, bytes: Uint8Array): void {
  try {
    const { lut } = read(format, bytes);
    expect(lut.values.every(Number.isFinite)).toBe(true);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
  }
}

describe('limits', () => {
  it('are those of the published format', () => {
    expect(limits.latticeSize).toEqual(cubeFormat.size3D);
    expect(limits.curveSize).toEqual(cubeFormat.size1D);
    expect(limits.lineBytes).toBe(cubeFormat.lineBytes);
  });
});

describe.each(Object.entries<LutFormat>(lutFormats))('the format %s', (_, format) => {
  it('is found by its extension, and says where it is published', () => {
    expect(format.extension).toMatch(/^\.[a-z0-9]+$/);
    expect(lutFormatOf(`reel${format.extension}`)).toBe(format);
    expect(format.title && format.source).toBeTruthy();
  });

  it.each(luts)('reads what it wrote: %s', (_, lut) => {
    const file = read(format, encode(format.write(lut, { title: 'Attic', comments: [['lamp', '3200 K']] })));
    expect(file.title).toBe('Attic');
    expect(file.comments).toEqual([['lamp', '3200 K']]);
    expect({ ...file.lut, values: 0 }).toEqual({ ...lut, values: 0 });
    const worst = lut.values.reduce(
      (most, value, i) => Math.max(most, Math.abs(value - file.lut.values[i])),
      0,
    );
    expect(file.lut.values).toHaveLength(lut.values.length);
    expect(worst).toBeLessThanOrEqual(sixDecimals);
  });

  it('writes again what it read, byte for byte', () => {
    const options = { title: 'Attic', comments: [['lamp', '3200 K']] as const };
    const text = format.write(luts[1][1], options);
    expect(format.write(read(format, encode(text)).lut, options)).toBe(text);
  });

  it('answers random bytes with nothing but an InputError', () => {
    const bytes = fc.uint8Array({ maxLength: 2000 });
    fc.assert(
      fc.property(bytes, (given) => readsOrRefuses(format, given)),
      { seed, numRuns: 2000 },
    );
  });

  it('answers a good file with a few bytes changed with nothing but an InputError', () => {
    const good = encode(format.write(luts[4][1], { title: 'Attic', comments: [['lamp', '3200 K']] }));
    const change = fc.record({
      at: fc.nat(good.length - 1),
      cut: fc.nat(40),
      put: fc.oneof(
        fc.uint8Array({ maxLength: 8 }),
        fc
          .constantFrom('\n', '\r', ' ', '-', 'e9', '.', ',', 'nan', '0 0 0\n', '#', '"', 'LUT_3D_SIZE 9\n')
          .map(encode),
      ),
    });
    const changed = fc.array(change, { minLength: 1, maxLength: 4 }).map((changes) =>
      changes.reduce<Uint8Array>((bytes, { at, cut, put }) => {
        const from = Math.min(at, bytes.length);
        return Uint8Array.from([...bytes.subarray(0, from), ...put, ...bytes.subarray(from + cut)]);
      }, good),
    );
    fc.assert(
      fc.property(changed, (given) => readsOrRefuses(format, given)),
      { seed, numRuns: 1000 },
    );
  });

  it('says the same of a file in pieces as of the whole', () => {
    const text = encode(format.write(luts[4][1], { title: 'Attic' }));
    const broken = text.slice(0, text.length - 30);
    for (const bytes of [text, broken]) {
      const inPieces = () => {
        const reader = format.createReader('test');
        for (const byte of bytes) reader.write(Uint8Array.of(byte));
        return reader.end();
      };
      const outcome = (run: () => unknown) => {
        try {
          return run();
        } catch (error) {
          return (error as InputError).problems;
        }
      };
      expect(outcome(inPieces)).toEqual(outcome(() => read(format, bytes)));
    }
  });
});
