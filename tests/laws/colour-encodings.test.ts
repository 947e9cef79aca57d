import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bt1886Display } from '../../src/colour/transfer-functions/bt1886.js';
import { cameraLog } from '../../src/colour/transfer-functions/camera-log.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { inverse, srgbGapLight } from '../tolerances.js';

const seed = 2084;
const numRuns = 500;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe.each(Object.entries(transferFunctions))('%s', (name, { decode, encode }) => {
  it('never falls by more than its rounding, in any pair of signals or lights', () => {
    const pair = fc.tuple(between(-1e3, 1e3), between(-1e3, 1e3));
    const law = ([a, b]: [number, number]) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      expect(decode(low)).toBeLessThanOrEqual(decode(high) + inverse);
      expect(encode(low)).toBeLessThanOrEqual(encode(high) + inverse);
    };
    fc.assert(fc.property(pair, law), { seed, numRuns });
  });

  it('is finite for every finite number', () => {
    const law = (x: number) => Number.isFinite(decode(x)) && Number.isFinite(encode(x));
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), law), { seed, numRuns });
  });

  it('gives every light back', () => {
    const tolerance = name === 'srgb' ? srgbGapLight : inverse;
    const law = (light: number) => Math.abs(decode(encode(light)) - light) < tolerance * Math.max(1, light);
    fc.assert(fc.property(between(-0.2, 20), law), { seed, numRuns });
  });
});

describe('camera logs of any parameters', () => {
  const parameters = fc
    .record({
      base: fc.constantFrom(2, Math.E, 10),
      logSideSlope: between(0.04, 0.5),
      logSideOffset: between(0.1, 0.7),
      linSideSlope: between(0.5, 10),
      linSideOffset: between(0, 0.1),
      breakAbove: between(1e-4, 0.05),
      hasBreak: fc.boolean(),
      steeper: fc.option(between(0.5, 2), { nil: undefined }),
    })
    .map(({ breakAbove, hasBreak, steeper, ...rest }) => {
      if (!hasBreak) return rest;
      const linSideBreak = (breakAbove - rest.linSideOffset) / rest.linSideSlope;
      const tangent = (rest.logSideSlope * rest.linSideSlope) / (breakAbove * Math.log(rest.base));
      return { ...rest, linSideBreak, linearSlope: steeper === undefined ? undefined : steeper * tangent };
    });

  it('come back from light and from signal, and rise', () => {
    const law = ([given, light, more]: [Parameters<typeof cameraLog>[0], number, number]) => {
      const { encode, decode } = cameraLog(given);
      expect(Math.abs(decode(encode(light)) - light)).toBeLessThan(inverse * Math.max(1, light));
      expect(Math.abs(encode(decode(light)) - light)).toBeLessThan(1e-9);
      expect(encode(light + more)).toBeGreaterThan(encode(light));
    };
    fc.assert(fc.property(fc.tuple(parameters, between(-0.1, 1.1), between(1e-4, 10)), law), {
      seed,
      numRuns,
    });
  });
});

describe('BT.1886 displays of any white and black', () => {
  it('start at black, end at white and come back', () => {
    const law = ([white, share, signal]: [number, number, number]) => {
      const black = share * white;
      const { encode, decode } = bt1886Display(white, black);
      expect(Math.abs(decode(0) - black)).toBeLessThan(inverse * white);
      expect(Math.abs(decode(1) - white)).toBeLessThan(inverse * white);
      expect(Math.abs(encode(decode(signal)) - signal)).toBeLessThan(1e-10);
    };
    const given = fc.tuple(between(1, 4000), between(0, 0.1), between(-0.1, 1.2));
    fc.assert(fc.property(given, law), { seed, numRuns });
  });
});
