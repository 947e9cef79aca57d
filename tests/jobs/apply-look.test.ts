import { describe, expect, it } from 'vitest';
import { loadEngine } from '../../src/cli/engine/load-engine.js';
import { applyLook } from '../../src/jobs/apply-look.js';
import { type ApplyEngine, plainEngine } from '../../src/lut/engine/engine.js';
import { seededRandom } from '../../src/maths/random.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';
import { randomLattice } from '../lut/engine/pictures.js';

const seed = 20240229;
const random = seededRandom(seed);
const lut = randomLattice(17, random);

function still(channels: Picture['channels'], bits: Picture['bits']): Picture {
  const picture = makePicture(37, 23, { channels, bits });
  picture.data.forEach((_, i) => (picture.data[i] = Math.floor(random() * 2 ** bits)));
  return picture;
}

const kinds = ([1, 2, 3, 4] as const).flatMap((channels) =>
  ([8, 16] as const).map((bits) => ({ channels, bits })),
);

describe.each(kinds)('a still of $channels channels, $bits bits', ({ channels, bits }) => {
  const picture = still(channels, bits);
  const before = picture.data.slice();
  const through = applyLook(lut, picture, loadEngine());

  it('keeps size and depth, and its source; grey becomes colour', () => {
    expect(through).toMatchObject({
      width: 37,
      height: 23,
      bits,
      channels: channels <= 2 ? channels + 2 : channels,
    });
    expect(picture.data).toEqual(before);
  });

  it('keeps alpha', () => {
    if (channels % 2 === 1) return;
    const alphas = ({ data, channels }: Picture) => data.filter((_, i) => i % channels === channels - 1);
    expect(alphas(through)).toEqual(alphas(picture));
  });

  it('is the same through any engine, to a code', () => {
    const plain = applyLook(lut, picture);
    through.data.forEach((code, i) => expect(Math.abs(code - plain.data[i])).toBeLessThanOrEqual(1));
  });
});

it('goes through the engine that is handed in, and through the plain one without', () => {
  const asked: number[] = [];
  const engine: ApplyEngine = {
    title: 'counting',
    apply: (...picture) => {
      asked.push(picture[3]);
      plainEngine.apply(...picture);
    },
  };
  const picture = still(1, 8);
  expect(applyLook(lut, picture, engine)).toEqual(applyLook(lut, picture));
  expect(asked).toEqual([3]);
});
