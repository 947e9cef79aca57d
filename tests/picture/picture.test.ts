import { describe, expect, it } from 'vitest';
import { changeDepth, expandGrey, lastCode, makePicture } from '../../src/picture/picture.js';
import type { PictureKind } from '../../src/picture/picture.js';

const rgb8: PictureKind = { channels: 3, bits: 8 };

describe('makePicture', () => {
  it('is black where no data is given, and keeps data that is given', () => {
    expect(makePicture(2, 3, rgb8).data).toEqual(new Uint8Array(18));
    const data = Uint16Array.from([1, 65535]);
    expect(makePicture(1, 1, { channels: 2, bits: 16 }, data).data).toBe(data);
  });

  it.each([
    ['no width', () => makePicture(0, 1, rgb8)],
    ['a negative height', () => makePicture(1, -1, rgb8)],
    ['a broken width', () => makePicture(1.5, 1, rgb8)],
    ['NaN', () => makePicture(NaN, 1, rgb8)],
    ['infinity', () => makePicture(Infinity, 1, rgb8)],
    ['five channels', () => makePicture(1, 1, { channels: 5 as 4, bits: 8 })],
    ['ten bits', () => makePicture(1, 1, { channels: 3, bits: 10 as 8 })],
    ['too little data', () => makePicture(2, 1, rgb8, new Uint8Array(5))],
    ['too much data', () => makePicture(1, 1, rgb8, new Uint8Array(4))],
    ['16-bit data called 8-bit', () => makePicture(1, 1, rgb8, new Uint16Array(3))],
    ['8-bit data called 16-bit', () => makePicture(1, 1, { channels: 3, bits: 16 }, new Uint8Array(3))],
  ])('refuses %s', (_, make) => {
    expect(make).toThrow(RangeError);
  });
});

describe('expandGrey', () => {
  it('makes three equal channels and keeps alpha', () => {
    const grey = makePicture(2, 1, { channels: 1, bits: 8 }, Uint8Array.from([7, 200]));
    expect(expandGrey(grey)).toMatchObject({ channels: 3, data: Uint8Array.from([7, 7, 7, 200, 200, 200]) });
    const alpha = makePicture(2, 1, { channels: 2, bits: 16 }, Uint16Array.from([1, 2, 60000, 65535]));
    expect(expandGrey(alpha)).toMatchObject({
      channels: 4,
      bits: 16,
      data: Uint16Array.from([1, 1, 1, 2, 60000, 60000, 60000, 65535]),
    });
  });

  it('returns colour as it is', () => {
    const colour = makePicture(1, 1, { channels: 4, bits: 8 });
    expect(expandGrey(colour)).toBe(colour);
  });
});

describe('changeDepth', () => {
  const all = makePicture(
    256,
    1,
    { channels: 1, bits: 8 },
    Uint8Array.from({ length: 256 }, (_, i) => i),
  );

  it('is undone by its way back, for every 8-bit code, and keeps the last code the last', () => {
    const deep = changeDepth(all, 16);
    expect(deep.data[255]).toBe(lastCode(16));
    expect(changeDepth(deep, 8)).toEqual(all);
  });

  it('goes to the nearest 8-bit code from every 16-bit code', () => {
    const deep = makePicture(
      256,
      256,
      { channels: 1, bits: 16 },
      Uint16Array.from({ length: 65536 }, (_, i) => i),
    );
    const data = Array.from(changeDepth(deep, 8).data);
    const farthest = data.reduce((worst, code, i) => Math.max(worst, Math.abs(code * 257 - i)), 0);
    expect(farthest).toBe(128); // half of the 257 codes that share one
  });
});
