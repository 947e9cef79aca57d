import { describe, expect, it } from 'vitest';
import { blendPixel, fillBox, makeCanvas, placePicture } from '../../src/picture/canvas.js';
import { makePicture } from '../../src/picture/picture.js';

describe('canvas', () => {
  it('lays ink over by its share', () => {
    const canvas = makeCanvas(1, 1, [100, 0, 255]);
    blendPixel(canvas, 0, 0, [200, 255, 255], 0.5);
    expect([...canvas.data]).toEqual([150, 128, 255]);
    blendPixel(canvas, 0, 0, [1, 2, 3], 1);
    expect([...canvas.data]).toEqual([1, 2, 3]);
    blendPixel(canvas, 0, 0, [9, 9, 9], 0);
    expect([...canvas.data]).toEqual([1, 2, 3]);
  });

  it('leaves out what falls outside', () => {
    const canvas = makeCanvas(2, 1, [0, 0, 0]);
    fillBox(canvas, { x: -5, y: -5, width: 6, height: 20 }, [7, 7, 7]);
    expect([...canvas.data]).toEqual([7, 7, 7, 0, 0, 0]);
  });

  it('places pictures, transparent ones over what is there', () => {
    const canvas = makeCanvas(2, 1, [10, 10, 10]);
    const picture = makePicture(
      2,
      1,
      { channels: 4, bits: 8 },
      Uint8Array.from([200, 0, 0, 0, 200, 0, 0, 255]),
    );
    placePicture(canvas, picture, 0, 0);
    expect([...canvas.data]).toEqual([10, 10, 10, 200, 0, 0]);
  });
});
