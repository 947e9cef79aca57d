import type { Triple } from '../../maths/matrix3.js';
import { length3 } from './length.js';
import { clamp01, smoothStep } from './noise.js';
import { finer, type Relief } from './relief.js';

/** How strongly each light falls on a body, and whence the sun comes: x right, y up, z to the viewer, length 1. */
export interface BodyLight {
  readonly toSun: Triple;
  readonly sun: number;
  readonly sky: number;
  readonly bounce: number;
}

/** A step on the grid from a point, and how far it goes in body units. */
interface Look {
  readonly columns: number;
  readonly rows: number;
  readonly far: number;
}

const shadowSteps = [0.03, 0.07, 0.12, 0.19, 0.28, 0.4, 0.55, 0.75] as const;

function looksTowards({ step }: Relief, toSun: Triple): Look[] {
  return shadowSteps.map((far) => ({
    columns: Math.round((far * toSun[0]) / step),
    rows: Math.round((-far * toSun[1]) / step),
    far,
  }));
}

function looksAround({ step }: Relief): Look[] {
  return [0.1, 0.28].flatMap((far) =>
    Array.from({ length: 6 }, (_, i) => ({
      columns: Math.round((far * Math.cos((i * Math.PI) / 3 + 10 * far)) / step),
      rows: Math.round((far * Math.sin((i * Math.PI) / 3 + 10 * far)) / step),
      far,
    })),
  );
}

/** Height of the relief at a step from a point; far below outside the grid. */
function heightAt({ z, width, height }: Relief, column: number, row: number, look: Look): number {
  const c = column + look.columns;
  const r = row + look.rows;
  return c < 0 || r < 0 || c >= width || r >= height ? -Infinity : z[r * width + c];
}

/** Share of the sun that reaches a point past the rest of the body, looked for step by step towards the sun. */
function sunReaching(
  relief: Relief,
  looks: readonly Look[],
  rise: number,
  column: number,
  row: number,
): number {
  const z = relief.z[row * relief.width + column];
  let hidden = 0;
  for (let i = 0; i < looks.length; i++) {
    const { far } = looks[i];
    const over = heightAt(relief, column, row, looks[i]) - z - far * rise;
    const least = 0.012 + 0.05 * far;
    if (over > least) hidden = Math.max(hidden, smoothStep(least, 0.05 + 0.24 * far, over));
  }
  return 1 - hidden;
}

/** Share of the sky that a point sees past what stands before it close by. */
function skyReaching(relief: Relief, looks: readonly Look[], column: number, row: number): number {
  const z = relief.z[row * relief.width + column];
  let hidden = 0;
  for (let i = 0; i < looks.length; i++)
    hidden += clamp01((heightAt(relief, column, row, looks[i]) - z) / looks[i].far - 0.15);
  return 1 - (0.85 * hidden) / looks.length;
}

/** Light on every point of the relief: sun, sky, bounce; and what the gloss throws back. */
export interface Illumination {
  readonly sun: Float32Array;
  readonly sky: Float32Array;
  readonly bounce: Float32Array;
  readonly gloss: Float32Array;
}

/**
 * Light on the relief. What hides sun and sky is looked for once in each pixel of the picture; slopes count at every
 * point of the finer grid.
 */
export function illuminate(relief: Relief, body: BodyLight): Illumination {
  const count = relief.z.length;
  const out = {
    sun: new Float32Array(count),
    sky: new Float32Array(count),
    bounce: new Float32Array(count),
    gloss: new Float32Array(count),
  };
  const towards = looksTowards(relief, body.toSun);
  const around = looksAround(relief);
  const { width, height, material } = relief;
  for (let row = 0; row < height; row += finer)
    for (let column = 0; column < width; column += finer) {
      let reaching = -1;
      let open = 1;
      for (let i = 0; i < finer * finer; i++) {
        const r = row + (i >> 1);
        const c = column + (i & 1);
        const at = r * width + c;
        if (material[at] < 0) continue;
        if (reaching < 0) {
          reaching = body.sun > 0 ? sunReaching(relief, towards, body.toSun[2], c, r) : 0;
          open = skyReaching(relief, around, c, r);
        }
        lightPoint(relief, body, at, c, r, reaching, open, out);
      }
    }
  return out;
}

const foldStep = 0.012;

function lightPoint(
  relief: Relief,
  { toSun, sun, sky, bounce }: BodyLight,
  at: number,
  column: number,
  row: number,
  reaching: number,
  open: number,
  out: Illumination,
): void {
  const { softness = 0.08, folds, gloss = 0 } = relief.materials[relief.material[at]];
  let nx = relief.nx[at];
  let ny = relief.ny[at];
  let nz = relief.nz[at];
  if (folds) {
    const x = relief.x0 + column * relief.step;
    const y = relief.y0 - row * relief.step;
    const here = folds(x, y);
    nx -= (folds(x + foldStep, y) - here) / foldStep;
    ny -= (folds(x, y + foldStep) - here) / foldStep;
  }
  const length = length3(nx, ny, nz);
  nx /= length;
  ny /= length;
  nz /= length;
  const facing = nx * toSun[0] + ny * toSun[1] + nz * toSun[2];
  out.sun[at] = sun * reaching * clamp01((facing + softness) / (1 + softness));
  out.sky[at] = sky * open * (0.62 + 0.38 * ny);
  out.bounce[at] = bounce * (0.3 + 0.7 * open) * (0.55 - 0.45 * ny);
  if (gloss <= 0) return;
  // The sun mirrored to the viewer: the slope lies halfway between the two.
  const shine = Math.max(0, (facing + nz) / length3(toSun[0], toSun[1], toSun[2] + 1));
  out.gloss[at] = gloss * (sun * reaching * shine ** 40 + 0.12 * sky * (1 - nz) ** 2);
}
