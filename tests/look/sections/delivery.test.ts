import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { customCamera, lookOf, next, through } from '../looks.js';

const seed = 101;
/** What a lattice of six decimals cannot tell. */
const identity = 1e-6;

describe('the delivery', () => {
  it('in wider primaries writes the same light smaller, white as white', () => {
    const look = lookOf({
      delivery: { primaries: 'bt2020', encoding: 'linear' },
      camera: { encoding: 'linear' },
    });
    // The first column of BT.2087's matrix from BT.709 to BT.2020.
    through(look, [1, 0, 0]).forEach((value, k) =>
      expect(Math.abs(value - [0.6274, 0.0691, 0.0164][k])).toBeLessThan(5e-5),
    );
    through(look, [1, 1, 1]).forEach((value) => expect(value).toBeCloseTo(1, 12));
  });

  it('in narrower primaries brings colours in instead of cutting them', () => {
    const fields = { camera: { primaries: 'bt2020', encoding: 'linear' }, delivery: { primaries: 'bt709' } };
    const cut = { ...fields, delivery: { ...fields.delivery, gamutCompression: false } };
    const [open, closed] = [lookOf(fields), lookOf(cut)];
    const greens = [
      [0.1, 0.6, 0.1],
      [0.05, 0.6, 0.1],
      [0.02, 0.6, 0.1],
    ];
    const reds = greens.map((code) => through(open, code)[0]);
    expect(reds[0]).toBeGreaterThan(reds[1]);
    expect(reds[1]).toBeGreaterThan(reds[2]);
    for (const green of greens) expect(through(closed, green)[0]).toBe(0);
  });

  it('in primaries beyond all light does not jump where blue takes luminance away', () => {
    const look = lookOf({ camera: { ...customCamera, encoding: 'linear' }, print: { saturation: 0.7 } });
    // Between these two the luminance of the colour passes zero.
    const [below, above] = [0.7488, 0.7489].map((blue) => through(look, [0.014, 0.05, blue]));
    below.forEach((value, k) => expect(Math.abs(above[k] - value)).toBeLessThan(1e-3));
    expect(Math.max(...below)).toBeGreaterThan(0.1);
  });

  it('without compression leaves colours that fit alone', () =>
    fc.assert(
      fc.property(fc.tuple(fc.integer({ min: 0, max: 255 }), fc.integer({ min: 0, max: 255 })), ([r, b]) => {
        const code = [r / 255, 0.5, b / 255];
        const [one, other] = [true, false].map((gamutCompression) =>
          through(lookOf({ ...next, delivery: { gamutCompression } }), code),
        );
        return one.every((value, k) => Math.abs(value - other[k]) < identity);
      }),
      { seed, numRuns: 30 },
    ));
});
