import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { flipPicture, turnUpright } from '../../src/picture/orientation.js';
import { makePicture } from '../../src/picture/picture.js';
import type { Picture } from '../../src/picture/picture.js';

function noise(width: number, height: number, channels: Picture['channels'], bits: Picture['bits']): Picture {
  const random = seededRandom(width * 100 + height);
  const picture = makePicture(width, height, { channels, bits });
  for (let i = 0; i < picture.data.length; i++) picture.data[i] = Math.floor(random() * 2 ** bits);
  return picture;
}

/** The same turn by an independent implementation: the tag is written into a file, and libvips obeys it. */
async function turnedByLibvips({ width, height, data }: Picture, orientation: number) {
  const file = await sharp(data, { raw: { width, height, channels: 3 } })
    .withMetadata({ orientation })
    .png()
    .toBuffer();
  const turned = await sharp(file).autoOrient().raw().toBuffer({ resolveWithObject: true });
  return { width: turned.info.width, height: turned.info.height, data: new Uint8Array(turned.data) };
}

describe('turnUpright', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('agrees with libvips on orientation %i', async (orientation) => {
    for (const picture of [noise(5, 3, 3, 8), noise(1, 4, 3, 8), noise(1, 1, 3, 8)]) {
      const { width, height, data } = turnUpright(picture, orientation);
      expect({ width, height, data }).toEqual(await turnedByLibvips(picture, orientation));
    }
  });

  it.each([
    [2, 2],
    [3, 3],
    [4, 4],
    [5, 5],
    [6, 8],
    [7, 7],
    [8, 6],
  ])('orientation %i is undone by %i, at any depth and with alpha', (there, back) => {
    for (const picture of [noise(4, 3, 4, 16), noise(3, 5, 2, 8), noise(2, 2, 1, 16)])
      expect(turnUpright(turnUpright(picture, there), back)).toEqual(picture);
  });

  it.each([0, 9, -1, 1.5, NaN, Infinity])(
    'leaves a picture with the reserved orientation %d alone',
    (value) => {
      const picture = noise(3, 2, 3, 8);
      expect(turnUpright(picture, value)).toBe(picture);
    },
  );
});

describe('flipPicture', () => {
  const row = (...data: number[]) => makePicture(2, 2, { channels: 1, bits: 8 }, Uint8Array.from(data));

  it.each([
    ['h', row(2, 1, 4, 3)],
    ['v', row(3, 4, 1, 2)],
    ['hv', row(4, 3, 2, 1)],
  ] as const)('%s', (flip, expected) => {
    expect(flipPicture(row(1, 2, 3, 4), flip)).toEqual(expected);
    expect(flipPicture(expected, flip)).toEqual(row(1, 2, 3, 4));
  });
});
