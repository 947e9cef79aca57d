import { describe, expect, it } from 'vitest';
import { lightFrames, seeFrame } from '../../../src/capture/speed/light-frame.js';
import { lightRatio } from '../../../src/capture/speed/compare-frames.js';
import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import { seededRandom } from '../../../src/maths/random.js';
import { makePicture } from '../../../src/picture/picture.js';

const [width, height] = [48, 36];
const block = 4;

/** A detailed picture, `gain` times as much light, its codes averaged over blocks as a decoder makes frames small. */
function averagedCodes(encode: (light: number) => number, gain: number) {
  const random = seededRandom(6);
  const codes = Uint16Array.from({ length: width * height }, () => {
    let sum = 0;
    for (let i = 0; i < block * block; i++) sum += encode(gain * (0.03 + 0.5 * random() ** 2));
    return Math.round((65535 * sum) / block ** 2);
  });
  return { picture: makePicture(width, height, { channels: 1, bits: 16 }, codes) };
}

async function ratio(name: 'gamma-2.4' | 'srgb' | 'acescct' | 'linear', gain: number): Promise<number> {
  const { encode, decode } = transferFunctions[name];
  const pictures = (async function* () {
    yield await Promise.resolve(averagedCodes(encode, 1));
    yield await Promise.resolve(averagedCodes(encode, gain));
  })();
  const seen = [];
  for await (const frame of lightFrames(pictures, decode)) seen.push(seeFrame(frame));
  return Math.exp(lightRatio(seen[0], seen[1]).log);
}

/** Rounding to 16 bits; and what the straight piece at the foot of sRGB does, which no power law is. */
const rounding = 2e-4;
const footShare = 0.02;

describe('frames made small in codes', () => {
  it.each(['gamma-2.4', 'linear'] as const)('keep a gain of light in %s', async (name) => {
    for (const gain of [0.7, 0.97, 1.2])
      expect(Math.abs((await ratio(name, gain)) / gain - 1)).toBeLessThan(rounding);
  });

  it('keep it in sRGB but for its foot, and in a logarithm but for its toe', async () => {
    for (const name of ['srgb', 'acescct'] as const)
      for (const gain of [0.9, 1.1])
        expect(Math.abs(((await ratio(name, gain)) - 1) / (gain - 1) - 1)).toBeLessThan(footShare);
  });
});
