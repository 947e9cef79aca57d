import { describe, expect, it } from 'vitest';
import {
  cam16Rows,
  cam16Surrounds,
  cat16Rows,
  degreeRows,
  whitesXyz,
} from '../../shared/check-values/adaptation.js';
import { cat16, cat16Cones, degreeOfAdaptation } from '../../src/colour/adaptation.js';
import { identity3, multiply3, transform3, type Triple } from '../../src/maths/matrix3.js';
import { appearance, inverse, printed } from '../tolerances.js';

const expectNear = (given: readonly number[], expected: readonly number[], tolerance: number) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(tolerance));

describe('CAT16', () => {
  it.each(cat16Rows)('from $from to $to at degree $degree', ({ from, to, degree, xyz, adapted, white }) => {
    const matrix = cat16(whitesXyz[from], whitesXyz[to], degree);
    expectNear(transform3(matrix, xyz), adapted, printed(7));
    expectNear(transform3(matrix, whitesXyz[from]), white, printed(7));
  });

  it('is the identity without adaptation and between equal whites', () => {
    expectNear(cat16(whitesXyz.a, whitesXyz.d65, 0), identity3, inverse);
    expectNear(cat16(whitesXyz.a, whitesXyz.a), identity3, inverse);
  });

  it('goes back by changing the whites', () => {
    const [there, back] = [cat16(whitesXyz.a, whitesXyz.d65), cat16(whitesXyz.d65, whitesXyz.a)];
    expectNear(multiply3(back, there), identity3, inverse);
  });

  it('asks the whites for their chromaticity only', () => {
    const bright = whitesXyz.a.map((value) => 250 * value) as unknown as Triple;
    expectNear(cat16(bright, whitesXyz.d65), cat16(whitesXyz.a, whitesXyz.d65), inverse);
  });
});

describe('degree of adaptation', () => {
  it.each(degreeRows)('at %s cd/m2', (luminance, average, dim, dark) => {
    expect(Math.abs(degreeOfAdaptation(luminance, 'average') - average)).toBeLessThan(printed(6));
    expect(Math.abs(degreeOfAdaptation(luminance, 'dim') - dim)).toBeLessThan(printed(6));
    expect(Math.abs(degreeOfAdaptation(luminance, 'dark') - dark)).toBeLessThan(printed(6));
  });

  it('ends at the factor of the surround in bright light', () => {
    expect(degreeOfAdaptation(1e6, 'average')).toBe(1);
    expect(degreeOfAdaptation(1e6, 'dark')).toBe(0.8);
  });
});

type Example = (typeof cam16Rows)[number];

/** CAM16 forward (Li et al. 2017), from our adaptation on: lightness, chroma, hue in degrees. */
function cam16({ xyz, white, adaptingLuminanceCdM2, backgroundY, surround }: Example) {
  const { c, nc } = cam16Surrounds[surround];
  const degree = degreeOfAdaptation(adaptingLuminanceCdM2, surround);
  const toEqualEnergy = cat16(white, [1, 1, 1], degree);
  const k = 1 / (5 * adaptingLuminanceCdM2 + 1);
  const fl = k ** 4 * adaptingLuminanceCdM2 + 0.1 * (1 - k ** 4) ** 2 * Math.cbrt(5 * adaptingLuminanceCdM2);
  const n = backgroundY / white[1];
  const nbb = 0.725 * n ** -0.2;
  const compress = (x: number) => {
    const power = ((fl * Math.abs(x)) / 100) ** 0.42;
    return (Math.sign(x) * 400 * power) / (power + 27.13) + 0.1;
  };
  const response = (colour: Triple) =>
    transform3(cat16Cones, transform3(toEqualEnergy, colour)).map(compress) as unknown as Triple;
  const achromatic = ([r, g, b]: Triple) => (2 * r + g + b / 20 - 0.305) * nbb;

  const [r, g, b] = response(xyz);
  const redGreen = r - (12 * g) / 11 + b / 11;
  const yellowBlue = (r + g - 2 * b) / 9;
  const hue = Math.atan2(yellowBlue, redGreen);
  const eccentricity = (Math.cos(hue + 2) + 3.8) / 4;
  const lightness =
    100 * (achromatic([r, g, b]) / achromatic(response(white))) ** (c * (1.48 + Math.sqrt(n)));
  const t =
    ((50000 / 13) * nc * nbb * eccentricity * Math.hypot(redGreen, yellowBlue)) / (r + g + (21 * b) / 20);
  const chroma = t ** 0.9 * Math.sqrt(lightness / 100) * (1.64 - 0.29 ** n) ** 0.73;
  return { J: lightness, C: chroma, h: ((hue * 180) / Math.PI + 360) % 360, degree };
}

describe('CAM16 worked examples, seen through our adaptation', () => {
  it.each(cam16Rows)('$xyz, $surround, $adaptingLuminanceCdM2 cd/m2', (row) => {
    const found = cam16(row);
    expect(Math.abs(found.degree - row.degree)).toBeLessThan(printed(6));
    expect(Math.abs(found.J - row.J)).toBeLessThan(appearance);
    expect(Math.abs(found.C - row.C)).toBeLessThan(appearance);
    expect(Math.abs(found.h - row.h)).toBeLessThan(appearance);
  });
});
