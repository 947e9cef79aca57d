import { describe, expect, it } from 'vitest';
import {
  panned,
  pictureBox,
  type Viewport,
  wholePicture,
  zoomed,
} from '../../../src/page/display/viewport.js';

const box = { x: 0, y: 0, width: 800, height: 600 };
const small = { width: 320, height: 240 };
const large = { width: 3200, height: 2400 };

describe('zoom', () => {
  it('comes to one canvas pixel a picture pixel, of a still smaller than its place too', () => {
    for (const picture of [small, large]) {
      const fitting = box.width / picture.width;
      const { width } = pictureBox(zoomed(wholePicture, picture, box, 1 / fitting), picture, box);
      expect(width).toBe(picture.width);
    }
  });

  it('becomes the whole picture where that just fits, and goes no smaller', () => {
    const near: Viewport = { zoom: 1, x: 0.1, y: 0.9 };
    expect(zoomed(near, large, box, 0.25)).toBe(wholePicture);
    expect(zoomed(near, large, box, 0.001)).toBe(wholePicture);
    expect(zoomed(wholePicture, small, box, 0.001).zoom).toBe(1);
    expect(zoomed({ zoom: 1, x: 0.5, y: 0.5 }, small, box, 2.5)).toBe(wholePicture);
  });

  it('keeps what is under the pointer under it', () => {
    const at = { x: 200, y: 450 };
    const place = (viewport: Viewport) => {
      const { x, y, width, height } = pictureBox(viewport, large, box);
      return [(at.x - x) / width, (at.y - y) / height];
    };
    const before = place(wholePicture);
    const after = place(zoomed(wholePicture, large, box, 4, at));
    // The box lies on whole canvas pixels.
    const pixel = 1 / large.width;
    after.forEach((share, i) => expect(Math.abs(share - before[i])).toBeLessThan(pixel));
  });
});

it('the whole picture is not moved, and no other leaves its place', () => {
  expect(panned(wholePicture, large, box, 100, 100)).toBe(wholePicture);
  expect(panned({ zoom: 1, x: 0.5, y: 0.5 }, large, box, 1e6, -1e6)).toMatchObject({ x: 0, y: 1 });
});
