import { type BrickWork, paintBricks } from '../drawing/brick.js';
import { edge, type Layer, paintFine } from '../drawing/layer.js';
import { fractalNoise, mix, noise, smoothStep } from '../drawing/noise.js';
import { acrossAt, heightAt, project } from '../drawing/perspective.js';
import { toBox } from '../drawing/shapes.js';
import { type Exposure, lit } from '../surfaces/surface.js';
import { house } from './quay.js';
import { daylight, palette, view } from './setting.js';

const wall: BrickWork = {
  bricks: [palette.brick, palette.brickPale, palette.brickDark],
  mortar: palette.mortar,
  long: 0.23,
  high: 0.08,
};

/** How strongly sun, sky and bounce fall on a place. */
interface Lights {
  readonly sun: number;
  readonly sky: number;
  readonly bounce: number;
}

/** Light on the front by height: grazing sun above the awning, below it the little that still gets in. */
function lightAt(Y: number): Lights {
  const sunny = smoothStep(house.awningHigh - 0.02, house.awningHigh + 0.04, Y);
  return {
    sun: daylight.sun * 0.52 * sunny,
    sky: mix(0.03 + 0.03 * smoothStep(2, 0, Y), 0.22, sunny),
    bounce: mix(0.035 + 0.05 * smoothStep(1.8, 0, Y), 0.12, sunny),
  };
}

/** Metres: the window of the upper floor and its shutters. */
const upper = { left: -4.9, right: -3.9, low: 3.6, high: 5.1, middle: -4.4 } as const;

/** Panes that mirror the sky, white curtains drawn aside behind them. */
function paintGlass(out: Exposure, X: number, Y: number): void {
  const aside = Math.abs(X - upper.middle);
  const drawn = 0.24 + 0.14 * ((Y - upper.low) / (upper.high - upper.low)) ** 2;
  lit(out, palette.glass, 0, 0.5);
  if (aside > drawn) lit(out, palette.white, 0.12 * (0.75 + 0.5 * noise(16 * X, 0.7 * Y)), 0.1);
  const mirrored =
    0.06 + 0.05 * smoothStep(upper.low, upper.high, Y) + 0.12 * fractalNoise(1.4 * X, 1.8 * Y, 3);
  for (let k = 0; k < 3; k++) out[k] += mirrored * palette.cloud.sky[k];
}

/** A box of red flowers under the window; false beside it. */
function paintFlowers(out: Exposure, X: number, Y: number, { sun, sky, bounce }: Lights): boolean {
  const box = toBox(X, Y, upper.left - 0.08, upper.low - 0.3, upper.right + 0.08, upper.low - 0.08, 0.02);
  const heads = noise(13 * X, 13 * Y);
  const ragged = 0.12 * (fractalNoise(7 * X, 6 * Y, 2) - 0.5);
  const leaves =
    toBox(X, Y, upper.left - 0.06, upper.low - 0.17, upper.right + 0.06, upper.low + 0.17, 0.1) + ragged;
  if (leaves > 0 && box > 0) return false;
  if (leaves > 0) lit(out, palette.darkWood, sun * 1.2, sky, bounce);
  else {
    const light = 0.5 + 1.1 * noise(21 * X + 3, 21 * Y);
    const flower = heads > 0.56;
    const surface = flower ? (noise(3 * X, 9) > 0.5 ? palette.red : palette.rose) : palette.leafSunny;
    lit(out, surface, 1.5 * sun * light, sky, bounce);
  }
  return true;
}

/** Frames, panes, shutters and flowers of the upper floor; false where there is wall. */
function paintUpperFloor(out: Exposure, X: number, Y: number, lights: Lights): boolean {
  const { sun, sky, bounce } = lights;
  if (paintFlowers(out, X, Y, lights)) return true;
  const opening = toBox(X, Y, upper.left, upper.low, upper.right, upper.high);
  if (opening < 0.1) {
    const bars = Math.min(Math.abs(X - upper.middle), Math.abs(Y - 4.5));
    if (opening < 0 && bars > 0.03) paintGlass(out, X, Y);
    else lit(out, palette.paintWhite, sun * (opening < 0 ? 0.8 : 1.1), sky, bounce);
    return true;
  }
  const aside = Math.abs(X - upper.middle) - 0.85;
  const shutter = toBox(aside, Y, -0.26, upper.low - 0.05, 0.26, upper.high + 0.05);
  if (shutter > 0) {
    // The shutter throws its shade on the wall to the right.
    if (toBox(aside - 0.06, Y + 0.06, -0.26, upper.low - 0.05, 0.26, upper.high + 0.05) > 0) return false;
    paintBricks(out, wall, X, Y, [0.01, 0.01], 0.1 * sun, sky * 0.8, bounce);
    return true;
  }
  const rim = shutter > -0.05 || Math.abs(Y - 4.35) < 0.04;
  const slat = rim ? 1 : 0.62 + 0.5 * smoothStep(0.15, 0.9, (Y * 13) % 1);
  lit(out, palette.paintGreen, sun * slat * 1.25, sky * slat, bounce);
  return true;
}

/** Door and shop window below the awning; false where there is wall. */
function paintGroundFloor(out: Exposure, X: number, Y: number, { sky, bounce }: Lights): boolean {
  const door = toBox(X, Y, -4.75, 0, -3.75, 2.15);
  const window = toBox(X, Y, -6.6, 0.95, -5.3, 2.1);
  if (Math.min(door, window) > 0.11) return false;
  if (door < 0) lit(out, palette.darkWood, 0, 0.012, 0.012);
  else if (window < 0)
    lit(out, palette.glass, 0, 0.14 + 0.5 * smoothStep(0.62, 0.8, fractalNoise(3 * X, 2 * Y, 2)), 0.05);
  else lit(out, palette.paintWhite, 0, sky, bounce);
  return true;
}

/** The front of the house on the quay: brick in sun above the awning, in deep shade below. */
export function paintBoathouse(layer: Layer): void {
  const Z = house.front;
  const [right] = project(view, house.side, 0, Z);
  const [, bottom] = project(view, 0, 0, Z);
  const pixel = Z / (view.focal * layer.scale);
  paintFine(layer, [-9, -9, right, bottom], (x, y, out) => {
    const X = acrossAt(view, x, Z);
    const Y = heightAt(view, y, Z);
    const lights = lightAt(Y);
    const drawn =
      Y > house.awningHigh ? paintUpperFloor(out, X, Y, lights) : paintGroundFloor(out, X, Y, lights);
    if (!drawn) paintBricks(out, wall, X, Y, [pixel, pixel], lights.sun, lights.sky, lights.bounce);
    return edge(X - house.side, pixel * 1.2);
  });
}
