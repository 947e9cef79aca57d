import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { seededRandom } from '../../src/maths/random.js';
import { makePicture } from '../../src/picture/picture.js';
import type { Picture } from '../../src/picture/picture.js';
import { decodeStill } from '../../src/stills/read-still.js';
import { encodeStill, kindOfName } from '../../src/stills/write-still.js';
import { someProfile } from './fixtures.js';

function noise(channels: Picture['channels'], bits: Picture['bits'], width = 7, height = 5): Picture {
  const random = seededRandom(channels * bits);
  const picture = makePicture(width, height, { channels, bits });
  for (let i = 0; i < picture.data.length; i++) picture.data[i] = Math.floor(random() * 2 ** bits);
  picture.data.set([0, 2 ** bits - 1, 1]);
  return picture;
}

const kinds = ([1, 2, 3, 4] as const).flatMap((channels) =>
  ([8, 16] as const).map((bits) => [channels, bits] as const),
);

describe.each(['a.png', 'a.tif', 'a.TIFF'])('%s', (name) => {
  it.each(kinds)('keeps every code of %i channels at %i bits', async (channels, bits) => {
    const picture = noise(channels, bits);
    const { bytes, notes } = await encodeStill(name, picture);
    expect((await decodeStill(bytes, name)).picture).toEqual(picture);
    expect(notes).toEqual([]);
  });

  it.each([8, 16] as const)('carries the profile as it is, and converts nothing (%i bits)', async (bits) => {
    const profile = new Uint8Array(await someProfile());
    for (const channels of [3, 4] as const) {
      const picture = noise(channels, bits);
      const { bytes, notes } = await encodeStill(name, picture, { profile });
      const back = await decodeStill(bytes, name);
      expect(back.picture).toEqual(picture);
      expect(back.profile).toEqual(profile);
      expect(notes).toEqual([]);
    }
  });

  it('says so when a profile does not suit the picture', async () => {
    const { bytes, notes } = await encodeStill(name, noise(1, 16), {
      profile: new Uint8Array(await someProfile()),
    });
    expect(notes).toEqual(['the colour profile does not suit the picture and was left out']);
    expect((await decodeStill(bytes, name)).picture).toEqual(noise(1, 16));
  });

  it('writes one pixel, one row and one column', async () => {
    for (const [width, height] of [
      [1, 1],
      [400, 1],
      [1, 400],
    ]) {
      const picture = noise(3, 16, width, height);
      expect((await decodeStill((await encodeStill(name, picture)).bytes, name)).picture).toEqual(picture);
    }
  });
});

describe('JPEG', () => {
  const even = (channels: Picture['channels'], bits: Picture['bits'], codes: readonly number[]) => {
    const picture = makePicture(16, 16, { channels, bits });
    for (let i = 0; i < picture.data.length; i++) picture.data[i] = codes[i % channels];
    return picture;
  };
  /** Codes may move this far in an even picture: rounding to YCbCr and back. */
  const jpegRounding = 2;

  it('is written finely, without thinning out colour', async () => {
    const { bytes, notes } = await encodeStill('a.jpg', even(3, 8, [200, 40, 90]));
    const { picture } = await decodeStill(bytes, 'a.jpg');
    [200, 40, 90].forEach((code, c) =>
      expect(Math.abs(picture.data[c] - code)).toBeLessThanOrEqual(jpegRounding),
    );
    expect((await sharp(bytes).metadata()).chromaSubsampling).toBe('4:4:4');
    expect(notes).toEqual([]);
  });

  it('rounds 16 bits, and says so', async () => {
    const { bytes, notes } = await encodeStill('a.jpeg', even(1, 16, [40000]));
    const { picture } = await decodeStill(bytes, 'a.jpeg');
    expect(picture.bits).toBe(8);
    expect(Math.abs(picture.data[0] - 40000 / 257)).toBeLessThanOrEqual(jpegRounding);
    expect(notes).toEqual(['JPEG holds 8 bits: the 16-bit codes were rounded; PNG and TIFF keep them']);
  });

  it('drops an alpha that hides nothing, and refuses one that does', async () => {
    const { bytes } = await encodeStill('a.jpg', even(4, 16, [20000, 30000, 40000, 65535]));
    expect((await decodeStill(bytes, 'a.jpg')).picture.channels).toBe(3);
    const work = encodeStill('a.jpg', even(2, 8, [90, 254]));
    await expect(work).rejects.toThrow('JPEG cannot hold transparency');
  });

  it('refuses a side that is too long', async () => {
    const work = encodeStill('a.jpg', makePicture(65536, 1, { channels: 1, bits: 8 }));
    await expect(work).rejects.toThrow('JPEG cannot hold more than 65535 pixels a side');
  });

  it('carries the profile', async () => {
    const profile = new Uint8Array(await someProfile());
    const { bytes } = await encodeStill('a.jpg', even(3, 8, [200, 40, 90]), { profile });
    expect((await decodeStill(bytes, 'a.jpg')).profile).toEqual(profile);
  });
});

describe('kindOfName', () => {
  it.each([
    ['out/a.png', 'png'],
    ['A.JPG', 'jpeg'],
    ['a.jpeg', 'jpeg'],
    ['a.b.tif', 'tiff'],
    ['a.TIFF', 'tiff'],
  ])('%s: %s', (name, kind) => {
    expect(kindOfName(name)).toBe(kind);
  });

  it.each([
    ['a.tfi', 'Did you mean ".tif"?'],
    ['a.exr', undefined],
    ['a', undefined],
    ['a.', undefined],
    ['', undefined],
    ['.png', undefined],
  ])('refuses %s', (name, hint) => {
    const refused = () => kindOfName(name);
    expect(refused).toThrow(InputError);
    try {
      refused();
    } catch (error) {
      const [problem] = (error as InputError).problems;
      expect(problem).toMatchObject({ file: name, allowed: '.png, .jpg, .jpeg, .tif, .tiff' });
      expect(problem.hint).toBe(hint);
    }
  });
});
