import type { Triple } from '../../maths/matrix3.js';
import type { Exposure } from '../surfaces/surface.js';
import type { Bounds } from './shapes.js';

/**
 * A painting ground: exposures of the three film layers, multiplied by the cover (0 nothing, 1 all), for a part of the
 * frame. Places are given in frame heights (x from the middle, y from the top), so a picture of any size is the same.
 */
export interface Layer {
  readonly width: number;
  readonly height: number;
  /** Pixels a frame height. */
  readonly scale: number;
  /** Pixels of the frame to the left of and above this layer. */
  readonly left: number;
  readonly top: number;
  /** Where the frame's left and upper edge lie, in frame heights. */
  readonly frameX: number;
  readonly frameY: number;
  readonly light: Float32Array;
  readonly cover: Float32Array;
}

/** Width of the scenes in frame heights: 4 to 3. */
export const frameAspect = 4 / 3;

/** A ground for the whole frame; a picture of other proportions shows the middle of the scene. */
export function frameLayer(width: number, height: number): Layer {
  const scale = Math.max(width / frameAspect, height);
  return {
    width,
    height,
    scale,
    left: 0,
    top: 0,
    frameX: -width / (2 * scale),
    frameY: 0.5 - height / (2 * scale),
    light: new Float32Array(3 * width * height),
    cover: new Float32Array(width * height),
  };
}

/** The part of a layer that bounds take up, in its pixels; undefined when they lie outside. */
function pixelBounds(layer: Layer, [x1, y1, x2, y2]: Bounds) {
  const left = Math.max(0, Math.floor((x1 - layer.frameX) * layer.scale) - layer.left - 1);
  const top = Math.max(0, Math.floor((y1 - layer.frameY) * layer.scale) - layer.top - 1);
  const right = Math.min(layer.width, Math.ceil((x2 - layer.frameX) * layer.scale) - layer.left + 1);
  const bottom = Math.min(layer.height, Math.ceil((y2 - layer.frameY) * layer.scale) - layer.top + 1);
  return right > left && bottom > top ? { left, top, right, bottom } : undefined;
}

/** An empty ground on the same pixels for a part of a layer; undefined when the part lies outside. */
export function partLayer(layer: Layer, bounds: Bounds): Layer | undefined {
  const part = pixelBounds(layer, bounds);
  if (!part) return undefined;
  const [width, height] = [part.right - part.left, part.bottom - part.top];
  return {
    ...layer,
    width,
    height,
    left: layer.left + part.left,
    top: layer.top + part.top,
    light: new Float32Array(3 * width * height),
    cover: new Float32Array(width * height),
  };
}

/** Says what a place looks like: writes its exposure and returns how much of it is covered, 0..1. */
export type Shade = (x: number, y: number, out: Exposure) => number;

/** Size of a pixel in frame heights. */
export const pixelOf = (layer: Layer): number => 1 / layer.scale;

/** Cover of an edge at a signed distance, one pixel wide (or as wide as said). */
export function edge(distance: number, width: number): number {
  const t = 0.5 - distance / width;
  return t < 0 ? 0 : t > 1 ? 1 : t;
}

/** Visits the pixels that bounds take up: their places in the frame, and their index. */
function eachPixel(layer: Layer, bounds: Bounds, visit: (x: number, y: number, at: number) => void): void {
  const part = pixelBounds(layer, bounds);
  if (!part) return;
  const step = pixelOf(layer);
  for (let row = part.top; row < part.bottom; row++) {
    const y = layer.frameY + (row + layer.top + 0.5) * step;
    for (let column = part.left; column < part.right; column++)
      visit(layer.frameX + (column + layer.left + 0.5) * step, y, row * layer.width + column);
  }
}

/** Paints over what is there. */
export function paint(layer: Layer, bounds: Bounds, shade: Shade): void {
  const out = new Float64Array(3);
  eachPixel(layer, bounds, (x, y, at) => {
    const cover = shade(x, y, out);
    if (cover <= 0) return;
    const keep = 1 - cover;
    layer.cover[at] = cover + keep * layer.cover[at];
    for (let k = 0, i = 3 * at; k < 3; k++, i++) layer.light[i] = cover * out[k] + keep * layer.light[i];
  });
}

/**
 * Darkens what is there.
 * @param left share of the light of each film layer that is left in the shadow
 * @param shadow how much of a place lies in it, 0..1
 */
export function darken(
  layer: Layer,
  bounds: Bounds,
  left: Triple,
  shadow: (x: number, y: number) => number,
): void {
  eachPixel(layer, bounds, (x, y, at) => {
    const share = shadow(x, y);
    if (share > 0) for (let k = 0; k < 3; k++) layer.light[3 * at + k] *= 1 - share * (1 - left[k]);
  });
}

/**
 * Where a pixel is looked at when once is not enough: a square of four, turned so that level and upright edges come out
 * smooth. The first two lie across from each other.
 */
const fourPlaces = [
  [-0.125, -0.375],
  [0.125, 0.375],
  [0.375, -0.125],
  [-0.375, 0.125],
] as const;

/** Two looks at a pixel that differ by less than this share are taken to be all there is. */
const alike = 0.12;

/** Paints like {@link paint}, looking at up to four places of a pixel: for patterns with hard edges of their own. */
export function paintFine(layer: Layer, bounds: Bounds, shade: Shade): void {
  const seen = new Float64Array(3);
  const step = pixelOf(layer);
  paint(layer, bounds, (x, y, out) => {
    let whole = shade(x + fourPlaces[0][0] * step, y + fourPlaces[0][1] * step, seen);
    let differs = false;
    for (let k = 0; k < 3; k++) out[k] = whole * seen[k];
    for (let i = 1; i < 4; i++) {
      if (i === 2 && !differs) return finish(out, whole, 2);
      const cover = shade(x + fourPlaces[i][0] * step, y + fourPlaces[i][1] * step, seen);
      if (i === 1)
        differs = Math.abs(cover - whole) > alike || Math.abs(cover * seen[1] - out[1]) > alike * out[1];
      whole += cover;
      for (let k = 0; k < 3; k++) out[k] += cover * seen[k];
    }
    return finish(out, whole, 4);
  });
}

/** Sums of looks made means; the cover is returned. */
function finish(out: Exposure, whole: number, looks: number): number {
  if (whole > 0) for (let k = 0; k < 3; k++) out[k] /= whole;
  return whole / looks;
}

/** Lays a part over the layer it was made for. */
export function lay(layer: Layer, part: Layer): void {
  for (let row = 0, from = 0; row < part.height; row++) {
    let to = (row + part.top - layer.top) * layer.width + part.left - layer.left;
    for (let column = 0; column < part.width; column++, from++, to++) {
      const keep = 1 - part.cover[from];
      if (keep === 1) continue;
      layer.cover[to] = part.cover[from] + keep * layer.cover[to];
      for (let k = 0; k < 3; k++)
        layer.light[3 * to + k] = part.light[3 * from + k] + keep * layer.light[3 * to + k];
    }
  }
}

/** Looks up a layer at a place: its exposure (by cover) into `out`, its cover returned; nothing outside. Nearest pixels blended. */
export function lookUp(layer: Layer, x: number, y: number, out: Exposure): number {
  const px = (x - layer.frameX) * layer.scale - layer.left - 0.5;
  const py = (y - layer.frameY) * layer.scale - layer.top - 0.5;
  const column = Math.floor(px);
  const row = Math.floor(py);
  out.fill(0);
  if (column < 0 || row < 0 || column >= layer.width - 1 || row >= layer.height - 1) return 0;
  const u = px - column;
  const v = py - row;
  const at = row * layer.width + column;
  let cover = 0;
  for (let corner = 0; corner < 4; corner++) {
    const weight = (corner & 1 ? u : 1 - u) * (corner & 2 ? v : 1 - v);
    const i = at + (corner & 1) + (corner & 2 ? layer.width : 0);
    cover += weight * layer.cover[i];
    for (let k = 0; k < 3; k++) out[k] += weight * layer.light[3 * i + k];
  }
  return cover;
}
