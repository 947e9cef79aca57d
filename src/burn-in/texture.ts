import { widestShift } from './sample.js';

/** A part of a picture, pixels. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Pixels by which a second look-up lies off. */
export interface Shift {
  readonly dx: number;
  readonly dy: number;
}

/** Means over a square of `2 reach + 1` pixels a side, held at the borders; rows, then columns. */
function blurred(plane: Float64Array, width: number, height: number, reach: number): Float64Array {
  const pass = (from: Float64Array, length: number, step: number, lines: number, lineStep: number) => {
    const out = new Float64Array(from.length);
    for (let line = 0; line < lines; line++) {
      const at = (i: number) => from[line * lineStep + step * Math.max(0, Math.min(length - 1, i))];
      let sum = 0;
      for (let i = -reach; i <= reach; i++) sum += at(i);
      for (let i = 0; i < length; i++) {
        out[line * lineStep + step * i] = sum / (2 * reach + 1);
        sum += at(i + reach + 1) - at(i - reach);
      }
    }
    return out;
  };
  return pass(pass(plane, width, 1, height, width), height, width, width, 1);
}

/** Texture: a little smoothed against noise, without the slow changes that a look alters most. */
export function texture(plane: Float64Array, width: number, height: number): Float64Array {
  const fine = blurred(plane, width, height, 1);
  const coarse = blurred(plane, width, height, 6);
  return fine.map((value, i) => value - coarse[i]);
}

/** The part of a window that stays within it however it is moved. */
export const inner = ({ width, height }: Window): Window => ({
  left: widestShift,
  top: widestShift,
  width: width - 2 * widestShift,
  height: height - 2 * widestShift,
});

/** Tiles of two stills that have texture in both, and how many of them show the same. */
export interface TileCount {
  readonly textured: number;
  readonly alike: number;
}

/** Tiles a side into which the window is cut. */
const tilesASide = 8;
/** Texture that noise of a code or so does not make, smoothed as texture is: 0.7 code of 255. */
const clearTexture = 0.7 / 255;
/** Share of a tile's pixels with such texture in both stills from which it counts. */
const texturedShare = 0.1;
/** Share of them in which both turn lighter, or both darker: half in two scenes, by chance up to so many in a tile. */
const sameShare = 0.75;

/** Pixels of a part with clear texture in both, and those in which it goes the same way: dust weighs no more than its place. */
function likeness(a: Float64Array, b: Float64Array, stride: number, part: Window, { dx, dy }: Shift) {
  let [clear, same] = [0, 0];
  for (let y = part.top; y < part.top + part.height; y++)
    for (let x = part.left; x < part.left + part.width; x++) {
      const p = a[(y + dy) * stride + x + dx];
      const q = b[y * stride + x];
      if (Math.abs(p) < clearTexture || Math.abs(q) < clearTexture) continue;
      clear++;
      if (p > 0 === q > 0) same++;
    }
  return { clear, same };
}

/**
 * Where both stills have texture, and how often it is the same. A gate's edge is alike in any two frames: tile by tile it
 * counts for little.
 */
export function countTiles(
  plain: Float64Array,
  burnt: Float64Array,
  window: Window,
  shift: Shift,
): TileCount {
  const part = inner(window);
  const width = Math.floor(part.width / tilesASide);
  const height = Math.floor(part.height / tilesASide);
  let [textured, alike] = [0, 0];
  for (let i = 0; i < tilesASide * tilesASide; i++) {
    const left = part.left + width * (i % tilesASide);
    const top = part.top + height * Math.floor(i / tilesASide);
    const { clear, same } = likeness(plain, burnt, window.width, { left, top, width, height }, shift);
    if (clear < texturedShare * width * height) continue;
    textured++;
    if (same > sameShare * clear) alike++;
  }
  return { textured, alike };
}
