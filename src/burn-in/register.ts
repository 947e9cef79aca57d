// burn-in/ judges a look that a device has burnt into a recording, from two stills of one frame. Knows looks as
// functions on code values, pictures and colour differences; must not know how a look is made, nor disk or screen.

import type { Picture } from '../picture/picture.js';
import { lastCode } from '../picture/picture.js';
import type { ColourMap } from './colour-map.js';
import { fitColourMap } from './colour-map.js';
import { border, samplePixels, widestShift } from './sample.js';
import type { Shift, TileCount, Window } from './texture.js';
import { countTiles, inner, texture } from './texture.js';

/** Where the burnt still lies: its pixel x, y shows what the plain still has at x + dx, y + dy. */
export interface Registration {
  readonly dx: number;
  readonly dy: number;
  /** Likeness of the two stills' texture at that place, -1..1; low where there is none. */
  readonly correlation: number;
  /** Tiles of the picture that have texture in both stills, and how many of them show the same. */
  readonly tiles: TileCount;
}

/** The middle of the picture, at most so many pixels a side, is enough to find a shift. */
const widestWindow = 768;

function middleOf({ width, height }: Picture): Window {
  const size = (whole: number) => Math.min(widestWindow, whole - 2 * border);
  const [w, h] = [size(width), size(height)];
  return { left: Math.floor((width - w) / 2), top: Math.floor((height - h) / 2), width: w, height: h };
}

/** Luma-like mean of the channels, 0..1, over a window moved by whole pixels. */
function grey(picture: Picture, { left, top, width, height }: Window): Float64Array {
  const { channels, data } = picture;
  const scale = 1 / (3 * lastCode(picture.bits));
  const out = new Float64Array(width * height);
  for (let y = 0, to = 0; y < height; y++)
    for (let x = 0, from = ((top + y) * picture.width + left) * channels; x < width; x++, from += channels)
      out[to++] = scale * (data[from] + data[from + 1] + data[from + 2]);
  return out;
}

/** Squared texture that is none: rounding alone leaves about so much, (0.1 code of 255)^2. */
const noTexture = (0.1 / 255) ** 2;

/** Correlation of two textures, the first looked up `dx, dy` pixels away, over a part that both have. */
function correlation(
  a: Float64Array,
  b: Float64Array,
  stride: number,
  part: Window,
  { dx, dy }: Shift,
): number {
  let [ab, aa, bb] = [0, 0, 0];
  for (let y = part.top; y < part.top + part.height; y++)
    for (let x = part.left; x < part.left + part.width; x++) {
      const p = a[(y + dy) * stride + x + dx];
      const q = b[y * stride + x];
      ab += p * q;
      aa += p * p;
      bb += q * q;
    }
  return ab / (Math.sqrt(aa * bb) + noTexture * part.width * part.height);
}

function wholeShift(
  plain: Float64Array,
  burnt: Float64Array,
  window: Window,
): Shift & { readonly correlation: number } {
  const part = inner(window);
  const at = (shift: Shift) => correlation(plain, burnt, window.width, part, shift);
  let best = { dx: 0, dy: 0, correlation: at({ dx: 0, dy: 0 }) };
  for (let dy = -widestShift; dy <= widestShift; dy++)
    for (let dx = -widestShift; dx <= widestShift; dx++) {
      const found = at({ dx, dy });
      if (found > best.correlation) best = { dx, dy, correlation: found };
    }
  return best;
}

/** The plain still, moved and mapped to the burnt one's colours, as a grey plane. */
function predicted(plain: Picture, window: Window, map: ColourMap, dx: number, dy: number): Float64Array {
  const { left, top, width, height } = window;
  const row = new Float64Array(3 * width);
  const out = new Float64Array(width * height);
  for (let y = 0; y < height; y++) {
    samplePixels(plain, left + dx, top + y + dy, width, row);
    map(row, width);
    for (let x = 0; x < width; x++) out[y * width + x] = (row[3 * x] + row[3 * x + 1] + row[3 * x + 2]) / 3;
  }
  return out;
}

/** One Gauss-Newton step (Lucas and Kanade 1981): how far the prediction has yet to move. */
function step(
  prediction: Float64Array,
  burnt: Float64Array,
  width: number,
  height: number,
): readonly [number, number] {
  let [xx, xy, yy, xr, yr] = [0, 0, 0, 0, 0];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      const gx = (prediction[i + 1] - prediction[i - 1]) / 2;
      const gy = (prediction[i + width] - prediction[i - width]) / 2;
      const rest = burnt[i] - prediction[i];
      xx += gx * gx;
      xy += gx * gy;
      yy += gy * gy;
      xr += gx * rest;
      yr += gy * rest;
    }
  // Where there is no texture the shift cannot be found, and does not matter.
  const hold = 1e-7 * width * height;
  const determinant = (xx + hold) * (yy + hold) - xy * xy;
  return [((yy + hold) * xr - xy * yr) / determinant, ((xx + hold) * yr - xy * xr) / determinant];
}

const steps = 6;

/**
 * Finds the shift between two stills of one frame, whatever look lies between them: whole pixels by the likeness of
 * texture, fractions by Gauss-Newton steps against the plain still in the burnt one's colours, fitted freely.
 * @param plain @param burnt of the same size, three channels or four, larger than twice {@link border}
 */
export function register(plain: Picture, burnt: Picture): Registration {
  const window = middleOf(plain);
  const { width, height } = window;
  const target = grey(burnt, window);
  const textures = [grey(plain, window), target].map((plane) => texture(plane, width, height));
  const whole = wholeShift(textures[0], textures[1], window);
  let [dx, dy] = [whole.dx, whole.dy];
  const map = fitColourMap(plain, burnt, dx, dy);
  for (let i = 0; i < steps; i++) {
    const [moreX, moreY] = step(predicted(plain, window, map, dx, dy), target, width, height);
    dx = hold(dx + moreX, whole.dx);
    dy = hold(dy + moreY, whole.dy);
  }
  const tiles = countTiles(textures[0], textures[1], window, whole);
  return { dx, dy, correlation: whole.correlation, tiles };
}

/** Fractions only: a step that leads further than a pixel from the whole shift has lost its way. */
const hold = (value: number, whole: number): number => Math.max(whole - 1, Math.min(whole + 1, value));
