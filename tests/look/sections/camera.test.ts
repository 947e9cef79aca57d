import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rangeScale } from '../../../src/colour/signal-range.js';
import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import { encodings, lookOf, primariesChoices, through } from '../looks.js';

const seed = 101;

describe('the camera', () => {
  it.each([
    ['hlg', 0.75, 1],
    ['pq', 0.580689, 1],
    ['srgb', 1, 1],
    ['printing-density-log', 685 / 1023, 1],
  ] as const)('%s has diffuse white, its open gate, at signal %s', (encoding, white, light) => {
    // BT.2408: 75 % HLG, 58 % PQ (203 cd/m2); code 685 of the printing-density log.
    const look = lookOf({ camera: { encoding }, delivery: { encoding: 'linear' } });
    through(look, [white, white, white]).forEach((value) =>
      expect(Math.abs(value - light)).toBeLessThan(1e-5),
    );
  });

  it('that put the open gate lower keeps it there, and everything below in proportion', () => {
    const look = lookOf({ camera: { openGate: 0.5 }, delivery: { encoding: 'linear' } });
    const { encode } = transferFunctions.srgb;
    for (const share of [0.1, 0.6, 1]) {
      const code = encode(0.5 * share);
      expect(through(look, [code, code, code])[0]).toBeCloseTo(0.5 * share, 12);
    }
  });

  it('is exposed as printed: a stop doubles its light, in every encoding, range and primaries', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(encodings)),
        fc.constantFrom(...Object.values(primariesChoices)),
        fc.constantFrom('full' as const, 'legal' as const),
        fc.double({ min: 0.3, max: 0.6, noNaN: true }),
        (encoding, primaries, range, signal) => {
          const { black, white } = rangeScale[range];
          const code = black + signal * (white - black);
          const look = lookOf({
            camera: { encoding, primaries, range },
            print: { exposureStops: 1 },
            delivery: { encoding: 'linear', range: 'full' },
          });
          const same = lookOf({
            camera: { encoding, primaries, range },
            delivery: { encoding: 'linear', range: 'full' },
          });
          const [once] = through(same, [code, code, code]);
          const [twice] = through(look, [code, code, code]);
          return Math.abs(twice - Math.min(1, 2 * once)) < 1e-9;
        },
      ),
      { seed },
    ));

  it('in legal range is delivered in legal range, black at 64 and white at 940 of 1023, never beyond', () => {
    const look = lookOf({ camera: { range: 'legal' }, print: { exposureStops: 1 } });
    through(look, [64 / 1023, 64 / 1023, 64 / 1023]).forEach((value) =>
      expect(value).toBeCloseTo(64 / 1023, 12),
    );
    through(look, [1, 1, 1]).forEach((value) => expect(value).toBeCloseTo(940 / 1023, 12));
    through(look, [0, 0, 0]).forEach((value) => expect(value).toBeCloseTo(64 / 1023, 12));
  });
});
