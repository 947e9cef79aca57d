import { describe, expect, it } from 'vitest';
import {
  acesAp0,
  bt709ToBt2020,
  lumaWeights,
  p3Cinema,
  srgbMatrices,
} from '../../../shared/check-values/primaries.js';
import { customPrimaries } from '../../../src/colour/primaries/custom-primaries.js';
import { primaries } from '../../../src/colour/primaries/index.js';
import { rgbToRgb, rgbToXyz } from '../../../src/colour/primaries/rgb-matrix.js';
import { invert3 } from '../../../src/maths/matrix3.js';
import { printed } from '../../tolerances.js';

const expectNear = (given: readonly number[], expected: readonly number[], tolerance: number) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i]), `element ${i}`).toBeLessThan(tolerance));

describe('matrices in print', () => {
  it('of sRGB (IEC 61966-2-1, four decimals)', () => {
    expectNear(rgbToXyz(primaries.bt709), srgbMatrices.rgbToXyz, printed(4));
  });

  it('of sRGB, the other way: the standard inverted its rounded matrix', () => {
    expectNear(invert3(srgbMatrices.rgbToXyz), srgbMatrices.xyzToRgb, printed(4));
  });

  it('from BT.709 to BT.2020 (ITU-R BT.2087)', () => {
    expectNear(rgbToRgb(primaries.bt709, primaries.bt2020), bt709ToBt2020.matrix, printed(4));
  });

  it('of ACES AP0 and from AP1 to it', () => {
    const ap0 = customPrimaries(acesAp0);
    expectNear(rgbToXyz(ap0), acesAp0.rgbToXyz, printed(10));
    expectNear(rgbToRgb(primaries['aces-ap1'], ap0), acesAp0.fromAp1, printed(10));
  });

  it('of P3 with the white of cinema projection', () => {
    expectNear(rgbToXyz(customPrimaries(p3Cinema)), p3Cinema.rgbToXyz, printed(10));
  });

  it('have the luma weights as their row of Y', () => {
    expectNear(rgbToXyz(primaries.bt709).slice(3, 6), lumaWeights.bt709, printed(4));
    expectNear(rgbToXyz(primaries.bt2020).slice(3, 6), lumaWeights.bt2020, printed(4));
  });
});
