import type { Surface } from '../surfaces/surface.js';
import { type Layer, partLayer } from './layer.js';
import { length2, length3 } from './length.js';
import { clamp01 } from './noise.js';
import type { Bounds } from './shapes.js';

/** What a solid is made of. */
export interface Material {
  readonly surface: Surface;
  /** How far light creeps round the edge of shade: 0 hard, 0.4 skin or snow. */
  readonly softness?: number;
  /** Strength of the gloss, 0..1. */
  readonly gloss?: number;
  /** Height of folds at a place of the body (body units), added to the form. */
  readonly folds?: (x: number, y: number) => number;
  /** Factor on the reflectance at a place of the body. */
  readonly pattern?: (x: number, y: number) => number;
}

/** Where a body stands in the frame: its origin, and frame heights a body unit. Body: x right, y up, z to the viewer. */
export interface Stand {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/**
 * Round solids seen from the front: the nearest surface of every point, its slope and its material, on a grid twice as
 * fine as the picture. Solids melt into one another where they meet.
 */
export interface Relief {
  readonly stand: Stand;
  /** The part of the frame that the relief will be laid on. */
  readonly part: Layer;
  readonly width: number;
  readonly height: number;
  /** Body units a point of the grid. */
  readonly step: number;
  /** Body x of the first column's and y of the first row's points. */
  readonly x0: number;
  readonly y0: number;
  readonly z: Float32Array;
  readonly nx: Float32Array;
  readonly ny: Float32Array;
  readonly nz: Float32Array;
  /** Index into `materials`, or -1 where there is nothing. */
  readonly material: Int16Array;
  readonly materials: Material[];
}

export const finer = 2;
const nothing = -1e9;

/** @param reach bounds of the body in body units: left, bottom, right, top; undefined when all lies outside the layer */
export function makeRelief(
  layer: Layer,
  stand: Stand,
  [left, bottom, right, top]: Bounds,
): Relief | undefined {
  const { x, y, size } = stand;
  const part = partLayer(layer, [x + left * size, y - top * size, x + right * size, y - bottom * size]);
  if (!part) return undefined;
  const [width, height] = [finer * part.width, finer * part.height];
  const pixel = 1 / (finer * part.scale);
  return {
    stand,
    part,
    width,
    height,
    step: pixel / size,
    x0: (part.frameX + part.left / part.scale + 0.5 * pixel - x) / size,
    y0: (y - part.frameY - part.top / part.scale - 0.5 * pixel) / size,
    z: new Float32Array(width * height).fill(nothing),
    nx: new Float32Array(width * height),
    ny: new Float32Array(width * height),
    nz: new Float32Array(width * height),
    material: new Int16Array(width * height).fill(-1),
    materials: [],
  };
}

/** The index of a material in the relief's list, added when new. */
function indexOf(relief: Relief, material: Material): number {
  const known = relief.materials.indexOf(material);
  return known >= 0 ? known : relief.materials.push(material) - 1;
}

/** The grid points inside bounds (body units), first and last of columns and rows. */
export function pointsIn({ width, height, step, x0, y0 }: Relief, [left, bottom, right, top]: Bounds) {
  return {
    firstColumn: Math.max(0, Math.ceil((left - x0) / step)),
    lastColumn: Math.min(width - 1, Math.floor((right - x0) / step)),
    firstRow: Math.max(0, Math.ceil((y0 - top) / step)),
    lastRow: Math.min(height - 1, Math.floor((y0 - bottom) / step)),
  };
}

/** Puts a surface point in, melting with what is within `melt` of it. The slope may be of any length. */
function putPoint(
  relief: Relief,
  at: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  material: number,
  melt: number,
): void {
  const before = relief.z[at];
  const length = length3(nx, ny, nz);
  const share = melt > 0 ? Math.min(1, Math.max(0, 0.5 + (0.5 * (z - before)) / melt)) : z > before ? 1 : 0;
  if (share === 0) return;
  if (before === nothing || share === 1) {
    relief.z[at] = z;
    relief.nx[at] = nx / length;
    relief.ny[at] = ny / length;
    relief.nz[at] = nz / length;
    relief.material[at] = material;
    return;
  }
  relief.z[at] = before + share * (z - before) + melt * share * (1 - share);
  relief.nx[at] += share * (nx / length - relief.nx[at]);
  relief.ny[at] += share * (ny / length - relief.ny[at]);
  relief.nz[at] += share * (nz / length - relief.nz[at]);
  if (share > 0.5) relief.material[at] = material;
}

export interface Ellipsoid {
  readonly centre: readonly [x: number, y: number, z: number];
  readonly radii: readonly [x: number, y: number, z: number];
  /** Turn in the picture plane, radians, anticlockwise. */
  readonly turn?: number;
  readonly melt?: number;
}

export function addEllipsoid(
  relief: Relief,
  made: Material,
  { centre, radii, turn = 0, melt = 0 }: Ellipsoid,
): void {
  const material = indexOf(relief, made);
  const [cx, cy, cz] = centre;
  const [rx, ry, rz] = radii;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const wide = length2(rx * cos, ry * sin);
  const tall = length2(rx * sin, ry * cos);
  const { step, x0, y0 } = relief;
  const inside = pointsIn(relief, [cx - wide, cy - tall, cx + wide, cy + tall]);
  for (let row = inside.firstRow; row <= inside.lastRow; row++)
    for (let column = inside.firstColumn; column <= inside.lastColumn; column++) {
      const x = x0 + column * step - cx;
      const y = y0 - row * step - cy;
      const u = (x * cos + y * sin) / rx;
      const v = (y * cos - x * sin) / ry;
      const rest = 1 - u * u - v * v;
      if (rest <= 0) continue;
      const w = Math.sqrt(rest);
      const nx = (u / rx) * cos - (v / ry) * sin;
      const ny = (u / rx) * sin + (v / ry) * cos;
      putPoint(relief, row * relief.width + column, cz + rz * w, nx, ny, w / rz, material, melt);
    }
}

export interface Limb {
  readonly from: readonly [x: number, y: number, z: number];
  readonly to: readonly [x: number, y: number, z: number];
  readonly radii: readonly [from: number, to: number];
  /** Depth of the section as a share of its width. */
  readonly flat?: number;
  readonly melt?: number;
  /** Cut off level below this height: a hem. */
  readonly hem?: number;
}

/** A rounded rod, thicker at one end. */
export function addLimb(
  relief: Relief,
  made: Material,
  { from, to, radii, flat = 1, melt = 0, hem = -Infinity }: Limb,
): void {
  const material = indexOf(relief, made);
  const [ax, ay, az] = from;
  const [dx, dy, dz] = [to[0] - ax, to[1] - ay, to[2] - az];
  const [r1, r2] = radii;
  const square = dx * dx + dy * dy || 1e-9;
  const bounds: Bounds = [
    Math.min(ax - r1, to[0] - r2),
    Math.max(hem, Math.min(ay - r1, to[1] - r2)),
    Math.max(ax + r1, to[0] + r2),
    Math.max(ay + r1, to[1] + r2),
  ];
  const { step, x0, y0 } = relief;
  const inside = pointsIn(relief, bounds);
  for (let row = inside.firstRow; row <= inside.lastRow; row++)
    for (let column = inside.firstColumn; column <= inside.lastColumn; column++) {
      const x = x0 + column * step - ax;
      const y = y0 - row * step - ay;
      const t = clamp01((x * dx + y * dy) / square);
      const u = x - t * dx;
      const v = y - t * dy;
      const r = r1 + t * (r2 - r1);
      const rest = r * r - u * u - v * v;
      if (rest <= 0) continue;
      const h = Math.sqrt(rest);
      putPoint(relief, row * relief.width + column, az + t * dz + flat * h, u, v, h / flat, material, melt);
    }
}
