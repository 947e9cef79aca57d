import { describe, expect, it } from 'vitest';
import { encodingChecks } from '../../shared/check-values/encodings.js';
import { transferFunctions, type TransferFunctionName } from '../../src/colour/transfer-functions/index.js';
import { inverse, printed, srgbGapLight } from '../tolerances.js';

/** What some encodings cannot give back, and why. */
const exceptions: Partial<
  Record<TransferFunctionName, { within: (signal: number) => boolean; signalTolerance: number }>
> = {
  // The standard's rounded constants leave signals between 4.5 beta and the power above it that no light has.
  bt709: {
    within: (signal) => Math.abs(signal) >= 0.081 && Math.abs(signal) < 0.08125,
    signalTolerance: 2.5e-4,
  },
  // No light is signal 7.3e-7: signals nearer to 0 decode to no light.
  pq: { within: (signal) => Math.abs(signal) < 7.4e-7, signalTolerance: 1.5e-6 },
};

const steps = (from: number, to: number, count: number) =>
  Array.from({ length: count + 1 }, (_, i) => from + (i * (to - from)) / count);

const signals = [...steps(-0.1, 1.1, 2400), ...steps(-1e-5, 1e-5, 40)].sort((a, b) => a - b);
const lights = [
  ...steps(-0.1, 1, 2200),
  ...steps(-0.01, 0.02, 3000),
  ...steps(1, 16, 300),
  ...steps(16, 65504, 100),
];
const extremes = [0, -0, 5e-324, 1e-300, 1e-20, 1e3, 1e6, 1e30, 1e100, Number.MAX_VALUE].flatMap((x) => [
  x,
  -x,
]);

describe.each(Object.entries(transferFunctions))(
  '%s',
  (key, { decode, encode, title, source, whiteLight }) => {
    const name = key as TransferFunctionName;
    const exception = exceptions[name];

    it('has a title, a source and a level of diffuse white', () => {
      expect(title).not.toBe('');
      expect(source).not.toBe('');
      expect(whiteLight).toBeGreaterThan(0);
      expect(encode(whiteLight)).toBeLessThanOrEqual(1);
    });

    it('has published values', () => {
      expect(encodingChecks[name]?.flatMap((table) => table.rows).length).toBeGreaterThanOrEqual(4);
    });

    it.each(encodingChecks[name] ?? [])('meets $source, $direction', (table) => {
      const { direction, rows, decimals, lightUnit = 1, signalUnit = 1 } = table;
      const [convert, fromUnit, toUnit] =
        direction === 'decode' ? [decode, signalUnit, lightUnit] : [encode, lightUnit, signalUnit];
      for (const [given, expected] of rows)
        expect(Math.abs(convert(given / fromUnit) * toUnit - expected), `of ${given}`).toBeLessThan(
          printed(decimals),
        );
    });

    it('gives every signal back', () => {
      const tolerance = (signal: number) => (exception?.within(signal) ? exception.signalTolerance : inverse);
      const lost = signals.filter(
        (signal) => !(Math.abs(encode(decode(signal)) - signal) < tolerance(signal)),
      );
      expect(lost).toEqual([]);
    });

    it('gives every light back', () => {
      const tolerance = (light: number) =>
        (name === 'srgb' ? srgbGapLight : inverse) * Math.max(1, Math.abs(light));
      const lost = lights.filter((light) => !(Math.abs(decode(encode(light)) - light) < tolerance(light)));
      expect(lost).toEqual([]);
    });

    it('rises, and stands still only where excepted', () => {
      const rising = steps(-0.1, 1.1, 12000);
      const turns = rising.filter((signal, i) => {
        const before = rising[i - 1] ?? -1;
        const still = exception?.within(signal) || exception?.within(before);
        return still ? decode(signal) < decode(before) : !(decode(signal) > decode(before));
      });
      expect(turns).toEqual([]);
      const brighter = steps(-0.1, 16, 20000);
      expect(brighter.filter((light, i) => !(encode(light) > encode(brighter[i - 1] ?? -1)))).toEqual([]);
    });

    it('is finite for every finite input and never NaN for infinity', () => {
      for (const x of extremes) {
        expect(Number.isFinite(decode(x)), `decode ${x}`).toBe(true);
        expect(Number.isFinite(encode(x)), `encode ${x}`).toBe(true);
      }
      for (const x of [Infinity, -Infinity]) {
        expect(decode(x)).not.toBeNaN();
        expect(encode(x)).not.toBeNaN();
      }
    });

    it('hands NaN on instead of hiding it', () => {
      expect(decode(NaN)).toBeNaN();
      expect(encode(NaN)).toBeNaN();
    });
  },
);

it('no published values lie about for encodings that are not there', () => {
  expect(Object.keys(encodingChecks).sort()).toEqual(Object.keys(transferFunctions).sort());
});
