import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { midGrey, printerPoint, printRun, type Printing } from '../../src/film/printing.js';
import type { Triple } from '../../src/maths/matrix3.js';

const idle: Printing = {
  exposureStops: 0,
  printerPoints: { red: 0, green: 0, blue: 0 },
  contrast: 1,
  saturation: 1,
};
const seed = 43;
const roundings = 1e-12;
const density = (light: number) => -Math.log10(light);

function printOf(printing: Partial<Printing>, colour: Triple): Triple {
  const run = Float64Array.from(colour);
  printRun({ ...idle, ...printing })(run, 1);
  return [run[0], run[1], run[2]];
}

const weights = rgbToXyz(primaries.bt2020).slice(3, 6);
const luminance = (colour: Triple) => colour.reduce((sum, value, k) => sum + weights[k] * value, 0);

const light = fc.double({ min: 1e-4, max: 1.2, noNaN: true });
const colour: fc.Arbitrary<Triple> = fc.tuple(light, light, light);
const points = fc.record({
  red: fc.integer({ min: -50, max: 50 }),
  green: fc.integer({ min: -50, max: 50 }),
  blue: fc.integer({ min: -50, max: 50 }),
});

describe('printing', () => {
  it('takes a point for 0.025 of log exposure and twelve points for about a stop (common practice)', () => {
    expect(printerPoint).toBe(0.025);
    const [r, g, b] = printOf({ printerPoints: { red: 12, green: 0, blue: -12 } }, [0.2, 0.2, 0.2]);
    expect(density(r) - density(0.2)).toBeCloseTo(-0.3, 12);
    expect(g).toBeCloseTo(0.2, 12);
    expect(density(b) - density(0.2)).toBeCloseTo(0.3, 12);
    expect(Math.abs(printOf({ exposureStops: 1 }, [0.2, 0.2, 0.2])[0] - 0.4)).toBeLessThan(roundings);
  });

  it('adds points and stops in density', () =>
    fc.assert(
      fc.property(
        colour,
        points,
        fc.double({ min: -4, max: 4, noNaN: true }),
        (given, printerPoints, exposureStops) => {
          const both = printOf({ printerPoints, exposureStops }, given).map(density);
          const shift = [printerPoints.red, printerPoints.green, printerPoints.blue];
          return both.every(
            (value, k) =>
              Math.abs(value - density(given[k]) + shift[k] * printerPoint + exposureStops * Math.log10(2)) <
              roundings,
          );
        },
      ),
      { seed },
    ));

  it('turns contrast about mid-grey: the slope of density, and mid-grey stays', () =>
    fc.assert(
      fc.property(colour, fc.double({ min: 0.2, max: 3, noNaN: true }), (given, contrast) => {
        const stays = printOf({ contrast }, [midGrey, midGrey, midGrey]);
        if (stays.some((value) => Math.abs(value - midGrey) > roundings)) return false;
        return printOf({ contrast }, given).every(
          (value, k) =>
            Math.abs(density(value) - density(midGrey) - contrast * (density(given[k]) - density(midGrey))) <
            1e-9,
        );
      }),
      { seed },
    ));

  it('exposes first and turns then, as a lab does', () => {
    const [r] = printOf({ exposureStops: 1, contrast: 2 }, [0.09, 0.09, 0.09]);
    expect(r).toBeCloseTo(midGrey, 12);
  });

  it('keeps greys grey and luminance where saturation moves', () =>
    fc.assert(
      fc.property(colour, fc.double({ min: 0, max: 3, noNaN: true }), light, (given, saturation, level) => {
        const grey = printOf({ saturation }, [level, level, level]);
        if (grey.some((value) => Math.abs(value - level) > roundings)) return false;
        return Math.abs(luminance(printOf({ saturation }, given)) - luminance(given)) < roundings;
      }),
      { seed },
    ));

  it('of saturation 0 is the grey of the same luminance; 2 doubles the distance from it', () => {
    const given: Triple = [0.5, 0.2, 0.1];
    const grey = luminance(given);
    printOf({ saturation: 0 }, given).forEach((value) => expect(value).toBeCloseTo(grey, 12));
    printOf({ saturation: 2 }, given).forEach((value, k) =>
      expect(value - grey).toBeCloseTo(2 * (given[k] - grey), 12),
    );
  });

  it('at defaults changes nothing, below and above film too', () => {
    for (const x of [-1, 0, 1e-12, 0.5, 1, 40]) expect(printOf({}, [x, x / 2, x / 3])[0]).toBeCloseTo(x, 12);
  });

  it('leaves no light none, and less than none finite', () => {
    const hard: Partial<Printing> = { contrast: 3, saturation: 3, exposureStops: 4 };
    printOf(hard, [0, 0, 0]).forEach((value) => expect(Math.abs(value)).toBe(0));
    printOf({ ...hard, contrast: 0.2 }, [-0.5, 0, 1e-9]).forEach((value) =>
      expect(Number.isFinite(value)).toBe(true),
    );
  });

  it('rises with every light for every contrast and exposure', () =>
    fc.assert(
      fc.property(light, light, fc.double({ min: 0.2, max: 3, noNaN: true }), (a, b, contrast) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        return printOf({ contrast }, [high, 0.1, 0.1])[0] >= printOf({ contrast }, [low, 0.1, 0.1])[0];
      }),
      { seed },
    ));
});
