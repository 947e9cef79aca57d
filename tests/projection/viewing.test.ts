import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { systemGammas } from '../../shared/check-values/projection.js';
import { xyOfXyz } from '../../src/colour/chromaticity.js';
import { planck } from '../../src/colour/illuminants/planck.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { filmLight } from '../../src/film/film-light.js';
import { transform3, type Triple } from '../../src/maths/matrix3.js';
import {
  lampAsSeen,
  openGateLuminance,
  type Surround,
  surroundExponent,
  surroundRun,
} from '../../src/projection/viewing.js';

const toXyz = rgbToXyz(primaries.bt2020);
const weights = toXyz.slice(3, 6);
const luminanceOf = (colour: ArrayLike<number>) =>
  weights.reduce((sum, weight, k) => sum + weight * colour[k], 0);
const surrounds = Object.keys(systemGammas) as Surround[];
const roundings = 1e-12;
const seed = 51;

const kelvins = fc.double({ min: 1500, max: 25000, noNaN: true });
const degrees = fc.double({ min: 0, max: 1, noNaN: true });
const whiteSeen = (kelvin: number, degree: number) =>
  transform3(lampAsSeen(filmLight(planck(kelvin)).openGate, degree), [1, 1, 1]);

describe('the lamp as the eye sees it', () => {
  it('fits the display: the open gate has its highest channel at 1', () =>
    fc.assert(
      fc.property(
        kelvins,
        degrees,
        (kelvin, degree) => Math.abs(Math.max(...whiteSeen(kelvin, degree)) - 1) < roundings,
      ),
      { seed },
    ));

  it('goes from the lamp to the white of the display on one way, nearer with every degree', () => {
    const d65 = primaries.bt2020.white;
    for (const kelvin of [2400, 3200, 5600, 9000]) {
      const distance = (degree: number) => {
        const [x, y] = xyOfXyz(transform3(toXyz, whiteSeen(kelvin, degree)));
        return Math.hypot(x - d65[0], y - d65[1]);
      };
      for (let step = 0; step < 10; step++)
        expect(distance((step + 1) / 10)).toBeLessThan(distance(step / 10));
      expect(distance(1)).toBeLessThan(1e-9);
    }
  });

  it('keeps ratios of light: it is a matrix, and black stays black', () => {
    const seen = lampAsSeen(filmLight(planck(3200)).openGate, 0.8);
    transform3(seen, [0, 0, 0]).forEach((value) => expect(value).toBe(0));
    const [one, half] = [transform3(seen, [0.8, 0.4, 0.2]), transform3(seen, [0.4, 0.2, 0.1])];
    one.forEach((value, k) => expect(Math.abs(value - 2 * half[k])).toBeLessThan(roundings));
  });

  it('knows the luminance of its open gate', () => {
    const openGate = filmLight(planck(3200)).openGate;
    const seen = lampAsSeen(openGate, 0.8);
    expect(Math.abs(openGateLuminance(seen) - luminanceOf(transform3(seen, [1, 1, 1])))).toBeLessThan(
      roundings,
    );
  });
});

function carried(from: Surround, to: Surround, colour: Triple, whiteLuminance?: number): Triple {
  const run = Float64Array.from(colour);
  surroundRun(from, to, whiteLuminance)(run, 1);
  return [run[0], run[1], run[2]];
}

/** At mid luminances the exponent holds to (0.002 / luminance)^2 of itself: 1e-4 at a tenth of white. */
const midLuminances = 1e-3;

describe('the surround', () => {
  it('has the textbook system gammas', () => expect(surroundExponent).toEqual(systemGammas));

  describe.each(surrounds.flatMap((from) => surrounds.map((to) => [from, to] as const)))(
    '%s to %s',
    (from, to) => {
      const exponent = systemGammas[to] / systemGammas[from];

      it('keeps white white and black black', () => {
        carried(from, to, [1, 1, 1]).forEach((value) => expect(Math.abs(value - 1)).toBeLessThan(roundings));
        carried(from, to, [0, 0, 0]).forEach((value) => expect(value).toBe(0));
      });

      it('keeps a warm white, whose luminance is below 1, where it is', () => {
        const warm: Triple = [1, 0.84, 0.7];
        carried(from, to, warm, luminanceOf(warm)).forEach((value, k) =>
          expect(Math.abs(value - warm[k])).toBeLessThan(roundings),
        );
      });

      it('raises mid luminances to the ratio of the two gammas, relative to white', () => {
        for (const y of [0.1, 0.18, 0.5, 0.8, 1.5]) {
          const [value] = carried(from, to, [y, y, y]);
          expect(Math.abs(value / y ** exponent - 1)).toBeLessThan(midLuminances);
          const [below, above] = [0.99 * y, 1.01 * y].map(
            (light) => carried(from, to, [light, light, light])[0],
          );
          const slope = Math.log(above / below) / Math.log(1.01 / 0.99);
          expect(Math.abs(slope / exponent - 1)).toBeLessThan(0.01);
        }
      });

      it('keeps chromaticity and rises with light, down to black and below', () =>
        fc.assert(
          fc.property(
            fc.tuple(degrees, degrees, degrees),
            fc.double({ min: -0.2, max: 2, noNaN: true }),
            fc.double({ min: -0.2, max: 2, noNaN: true }),
            (colour, p, q) => {
              const [r, g, b] = carried(from, to, colour);
              if (
                Math.abs(r * colour[1] - g * colour[0]) > roundings ||
                Math.abs(g * colour[2] - b * colour[1]) > roundings
              )
                return false;
              const [low, high] = p < q ? [p, q] : [q, p];
              return carried(from, to, [low, low, low])[0] <= carried(from, to, [high, high, high])[0];
            },
          ),
          { seed },
        ));
    },
  );

  it('from dark to average lifts the shadows, as a projected picture looks in a lit room', () => {
    const [value] = carried('dark', 'average', [0.1, 0.1, 0.1]);
    expect(value).toBeGreaterThan(0.2);
  });

  it('there and back is where it was', () =>
    fc.assert(
      fc.property(fc.double({ min: 0.03, max: 1, noNaN: true }), (y) => {
        const there = carried('dark', 'average', [y, y, y]);
        // Both ways hold to the exponent only as far as mid luminances go.
        return Math.abs(carried('average', 'dark', there)[0] / y - 1) < 5e-3;
      }),
      { seed },
    ));
});
