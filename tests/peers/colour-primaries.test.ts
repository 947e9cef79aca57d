import Color from 'colorjs.io';
import { converter } from 'culori';
// @ts-expect-error the package has no types
import * as lcms from 'lcms-wasm';
import { describe, expect, it } from 'vitest';
import { labOfXyz } from '../../src/colour/difference.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb, rgbToXyz, whiteOf } from '../../src/colour/primaries/rgb-matrix.js';
import { srgb } from '../../src/colour/transfer-functions/srgb.js';
import {
  diagonal3,
  invert3,
  multiply3,
  transform3,
  type Matrix3,
  type Triple,
} from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';
import { difference, singlePrecisionLab } from '../tolerances.js';

const random = seededRandom(709);
const colours = Array.from({ length: 500 }, (): Triple => [random(), random(), random()]);

const expectNear = (given: readonly number[], expected: readonly number[], tolerance: number) =>
  given.forEach((value, i) => expect(Math.abs(value - expected[i]), `${given}`).toBeLessThan(tolerance));

/** The white of the profile connection space (ISO 15076-1). */
const profileWhite: Triple = [0.9642, 1, 0.8249];

/** Bradford's adaptation, as profiles use it: the cone matrix as printed in ISO 15076-1, annex E. */
function bradford(from: Triple, to: Triple): Matrix3 {
  const cones: Matrix3 = [0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296];
  const [before, after] = [transform3(cones, from), transform3(cones, to)];
  const gains = diagonal3([after[0] / before[0], after[1] / before[1], after[2] / before[2]]);
  return multiply3(invert3(cones), multiply3(gains, cones));
}

/** CIELAB of sRGB signals through the built-in profiles of lcms, without its tables. */
async function labByProfile(signals: readonly Triple[]): Promise<number[][]> {
  const engine = await lcms.instantiate();
  const floats = (space: number): number =>
    lcms.FLOAT_SH(1) | lcms.COLORSPACE_SH(space) | lcms.CHANNELS_SH(3) | lcms.BYTES_SH(4);
  const transform = engine.cmsCreateTransform(
    engine.cmsCreate_sRGBProfile(),
    floats(lcms.PT_RGB),
    engine.cmsCreateLab4Profile(),
    floats(lcms.PT_Lab),
    lcms.INTENT_RELATIVE_COLORIMETRIC,
    lcms.cmsFLAGS_NOOPTIMIZE,
  );
  const out: Float32Array = engine.cmsDoTransform(transform, signals.flat(), signals.length);
  return signals.map((_, i) => [...out.slice(3 * i, 3 * i + 3)]);
}

describe('linear RGB to XYZ', () => {
  it.each([
    ['bt709', 'srgb-linear'],
    ['bt2020', 'rec2020-linear'],
    ['p3-d65', 'p3-linear'],
  ] as const)('of %s agrees with colorjs.io', (name, peer) => {
    const matrix = rgbToXyz(primaries[name]);
    for (const rgb of colours) {
      const xyz = new Color(peer, [...rgb]).to('xyz-d65').coords as number[];
      expectNear(transform3(matrix, rgb), xyz, difference);
    }
  });

  it('of BT.709 to BT.2020 agrees with colorjs.io', () => {
    const matrix = rgbToRgb(primaries.bt709, primaries.bt2020);
    for (const rgb of colours) {
      const peer = new Color('srgb-linear', [...rgb]).to('rec2020-linear').coords as number[];
      expectNear(transform3(matrix, rgb), peer, difference);
    }
  });
});

describe('CIELAB of sRGB', () => {
  it('under D65 agrees with culori', () => {
    const toLab = converter('lab65');
    const matrix = rgbToXyz(primaries.bt709);
    for (const rgb of colours) {
      const { l, a, b } = toLab({ mode: 'lrgb', r: rgb[0], g: rgb[1], b: rgb[2] });
      expectNear(labOfXyz(transform3(matrix, rgb), whiteOf(primaries.bt709)), [l, a, b], difference);
    }
  });

  it('under D50 agrees with lcms, which adapts with Bradford', async () => {
    const theirs = await labByProfile(colours);
    const matrix = rgbToXyz(primaries.bt709);
    colours.forEach((signal, i) => {
      const [r, g, b] = signal.map(srgb.decode);
      const xyz = transform3(bradford(whiteOf(primaries.bt709), profileWhite), transform3(matrix, [r, g, b]));
      expectNear(labOfXyz(xyz, profileWhite), theirs[i], singlePrecisionLab);
    });
  });
});
