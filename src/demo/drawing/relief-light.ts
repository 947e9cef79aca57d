import type { Triple } from '../../maths/matrix3.js';
import { lit, type Surface, towards } from '../surfaces/surface.js';
import { lay, type Layer } from './layer.js';
import { clamp01, smoothStep } from './noise.js';
import { eachPoint, finer, type Material, type Relief } from './relief.js';
import type { Bounds } from './shapes.js';

/** How strongly each light falls on a body, and whence the sun comes: x right, y up, z to the viewer, length 1. */
export interface BodyLight {
  readonly toSun: Triple;
  readonly sun: number;
  readonly sky: number;
  readonly bounce: number;
}

/** What has been drawn on a body: a surface with soft edges, such as lips or a stripe. */
export interface Stroke {
  readonly surface: Surface;
  /** The material it is drawn on; what lies over that hides it. */
  readonly on: Material;
  /** Body units: left, bottom, right, top. */
  readonly bounds: Bounds;
  /** Cover 0..1 at a body place. */
  readonly cover: (x: number, y: number) => number;
}

const shadowSteps = [0.03, 0.07, 0.12, 0.19, 0.28, 0.4, 0.55, 0.75] as const;
const nearby: readonly Triple[] = [0.1, 0.28].flatMap((radius) =>
  Array.from({ length: 6 }, (_, i): Triple => {
    const angle = (i * Math.PI) / 3 + 10 * radius;
    return [radius * Math.cos(angle), radius * Math.sin(angle), radius];
  }),
);

/** Where a body place falls on the grid, or -1 outside. */
function gridPlace({ width, height, step, x0, y0 }: Relief, x: number, y: number): number {
  const column = Math.round((x - x0) / step);
  const row = Math.round((y0 - y) / step);
  return column < 0 || row < 0 || column >= width || row >= height ? -1 : row * width + column;
}

/** Share of the sun that reaches a point past the rest of the body, looked for step by step towards the sun. */
function sunReaching(relief: Relief, toSun: Triple, x: number, y: number, z: number): number {
  let hidden = 0;
  for (const t of shadowSteps) {
    const at = gridPlace(relief, x + t * toSun[0], y + t * toSun[1]);
    if (at < 0) break;
    hidden = Math.max(hidden, smoothStep(0.01, 0.03 + 0.12 * t, relief.z[at] - z - t * toSun[2]));
  }
  return 1 - hidden;
}

/** Share of the sky that a point sees past what stands before it close by. */
function skyReaching(relief: Relief, x: number, y: number, z: number): number {
  let hidden = 0;
  for (const [dx, dy, radius] of nearby) {
    const at = gridPlace(relief, x + dx, y + dy);
    if (at >= 0) hidden += clamp01((relief.z[at] - z) / radius - 0.15);
  }
  return 1 - (0.85 * hidden) / nearby.length;
}

/** Light on every point of the relief, three numbers each: sun, sky, bounce; and the gloss. */
interface Illumination {
  readonly sun: Float32Array;
  readonly sky: Float32Array;
  readonly bounce: Float32Array;
  readonly gloss: Float32Array;
}

const everything = (relief: Relief): Bounds => [-1e6, -1e6, 1e6, 1e6].map((v) => v * relief.step) as unknown as Bounds;

function illuminate(relief: Relief, { toSun, sun, sky, bounce }: BodyLight): Illumination {
  const count = relief.z.length;
  const out = { sun: new Float32Array(count), sky: new Float32Array(count), bounce: new Float32Array(count), gloss: new Float32Array(count) };
  const half = Math.hypot(toSun[0], toSun[1], toSun[2] + 1);
  eachPoint(relief, everything(relief), (at, x, y) => {
    const index = relief.material[at];
    if (index < 0) return;
    const { softness = 0.08, folds, gloss = 0 } = relief.materials[index];
    let [nx, ny, nz] = [relief.nx[at], relief.ny[at], relief.nz[at]];
    if (folds) {
      const d = 0.012;
      const here = folds(x, y);
      nx -= (folds(x + d, y) - here) / d;
      ny -= (folds(x, y + d) - here) / d;
    }
    const length = Math.hypot(nx, ny, nz);
    [nx, ny, nz] = [nx / length, ny / length, nz / length];
    const z = relief.z[at];
    const facing = nx * toSun[0] + ny * toSun[1] + nz * toSun[2];
    const direct = clamp01((facing + softness) / (1 + softness));
    const reaching = direct > 0 ? sunReaching(relief, toSun, x, y, z) : 0;
    const open = skyReaching(relief, x, y, z);
    out.sun[at] = sun * direct * reaching;
    out.sky[at] = sky * open * (0.62 + 0.38 * ny);
    out.bounce[at] = bounce * (0.3 + 0.7 * open) * (0.55 - 0.45 * ny);
    if (gloss > 0) {
      const shine = Math.max(0, (nx * toSun[0] + ny * toSun[1] + nz * (toSun[2] + 1)) / half);
      out.gloss[at] = gloss * (sun * reaching * shine ** 40 + 0.12 * sky * (1 - nz) ** 2);
    }
  });
  return out;
}

/** Light just past the edge of the sun is red in skin and other things that light enters; a share of the sun's. */
const edgeGlow: Triple = [0.1, 0.02, 0.006];

function colour(relief: Relief, light: Illumination, strokes: readonly Stroke[]): Float32Array {
  const colours = new Float32Array(3 * relief.z.length);
  const out = new Float64Array(3);
  const other = new Float64Array(3);
  eachPoint(relief, everything(relief), (at, x, y) => {
    const index = relief.material[at];
    if (index < 0) return;
    const { surface, pattern, softness = 0 } = relief.materials[index];
    const factor = pattern ? pattern(x, y) : 1;
    const sun = light.sun[at];
    lit(out, surface, sun * factor, light.sky[at] * factor, light.bounce[at] * factor);
    const glow = softness > 0.2 ? 4 * sun * (1 - sun) : 0;
    for (let k = 0; k < 3; k++) colours[3 * at + k] = out[k] + glow * edgeGlow[k] * surface.sun[k] + light.gloss[at];
  });
  for (const { surface, on, bounds, cover } of strokes) {
    const under = relief.materials.indexOf(on);
    eachPoint(relief, bounds, (at, x, y) => {
      if (relief.material[at] !== under || under < 0) return;
      const share = cover(x, y);
      if (share <= 0) return;
      lit(other, surface, light.sun[at], light.sky[at], light.bounce[at]);
      for (let k = 0; k < 3; k++) out[k] = colours[3 * at + k];
      towards(out, other, Math.min(1, share));
      colours.set(out, 3 * at);
    });
  }
  return colours;
}

/** Lights a relief and lays it, made coarser to the picture's pixels, over the layer. Its own part is returned. */
export function layRelief(
  layer: Layer,
  relief: Relief,
  light: BodyLight,
  strokes: readonly Stroke[] = [],
): Layer {
  const colours = colour(relief, illuminate(relief, light), strokes);
  const { part, width } = relief;
  for (let row = 0, to = 0; row < part.height; row++)
    for (let column = 0; column < part.width; column++, to++)
      for (let i = 0; i < finer * finer; i++) {
        const at = (finer * row + (i >> 1)) * width + finer * column + (i & 1);
        if (relief.material[at] < 0) continue;
        part.cover[to] += 1 / (finer * finer);
        for (let k = 0; k < 3; k++) part.light[3 * to + k] += colours[3 * at + k] / (finer * finer);
      }
  lay(layer, part);
  return part;
}
