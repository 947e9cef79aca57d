import type { LightFrame } from './light-frame.js';

/** Where a frame lies against another: pixels to the right and down. */
export interface Shift {
  readonly x: number;
  readonly y: number;
}

/** The frame moved by a shift, bilinear; NaN where nothing comes from. */
export function moveFrame({ width, height, light }: LightFrame, { x, y }: Shift): Float32Array {
  const out = new Float32Array(light.length).fill(NaN);
  const [left, top] = [Math.floor(-x), Math.floor(-y)];
  const [fx, fy] = [-x - left, -y - top];
  for (let row = 0; row < height; row++) {
    const from = row + top;
    if (from < 0 || from + 1 >= height) continue;
    for (let column = Math.max(0, -left); column < Math.min(width, width - 1 - left); column++) {
      const at = from * width + column + left;
      const upper = light[at] + fx * (light[at + 1] - light[at]);
      const lower = light[at + width] + fx * (light[at + width + 1] - light[at + width]);
      out[row * width + column] = upper + fy * (lower - upper);
    }
  }
  return out;
}

/** Moves smaller than this are the pixel grid's. */
const enough = 0.01;
const passes = 5;
const farthest = 6;

/**
 * The shift between two frames of one scene: weave in the gate, or a pan. Least squares on the picture's slopes (Lucas
 * and Kanade 1981), pixels that do not follow weighed down, so that the ground wins over what moves on it.
 * @param gain light of `to` over light of `from`
 */
export function shiftBetween(from: LightFrame, to: LightFrame, gain: number): Shift {
  const { width, height } = to;
  let shift: Shift = { x: 0, y: 0 };
  for (let pass = 0; pass < passes; pass++) {
    const moved = pass === 0 ? from.light : moveFrame(from, shift);
    let [xx, xy, yy, xt, yt, spread, count] = [0, 0, 0, 0, 0, 0, 0];
    const differences = new Float32Array(width * height);
    for (let i = 0; i < differences.length; i++) {
      differences[i] = to.light[i] - gain * moved[i];
      if (differences[i] === differences[i]) {
        spread += Math.abs(differences[i]);
        count++;
      }
    }
    const scale = 1 / Math.max(1e-6, (1.5 * spread) / Math.max(1, count)) ** 2;
    for (let row = 1; row + 1 < height; row++)
      for (let i = row * width + 1; i < (row + 1) * width - 1; i++) {
        const gx = (to.light[i + 1] - to.light[i - 1]) / 2;
        const gy = (to.light[i + width] - to.light[i - width]) / 2;
        const away = differences[i];
        if (away !== away) continue;
        const weight = 1 / (1 + scale * away * away);
        xx += weight * gx * gx;
        xy += weight * gx * gy;
        yy += weight * gy * gy;
        xt -= weight * gx * away;
        yt -= weight * gy * away;
      }
    const determinant = xx * yy - xy * xy;
    if (!(determinant > 1e-6 * (xx + yy) ** 2)) return { x: 0, y: 0 };
    const step = { x: (yy * xt - xy * yt) / determinant, y: (xx * yt - xy * xt) / determinant };
    shift = { x: shift.x + step.x, y: shift.y + step.y };
    if (!(Math.hypot(shift.x, shift.y) < farthest)) return { x: 0, y: 0 };
    if (Math.hypot(step.x, step.y) < enough) break;
  }
  return shift;
}
