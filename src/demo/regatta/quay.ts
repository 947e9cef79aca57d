import { type BrickWork, paintBricks } from '../drawing/brick.js';
import { type Layer, paint, pixelOf } from '../drawing/layer.js';
import { clamp01, fractalNoise, noise, smoothStep } from '../drawing/noise.js';
import { acrossAt, depthOfLevel, depthOfSide, heightAt, project } from '../drawing/perspective.js';
import { type Exposure, lit, scale } from '../surfaces/surface.js';
import { daylight, palette, view, waterLevel } from './setting.js';

const paving: BrickWork = {
  bricks: [palette.brick, palette.brickDark, palette.brickPale],
  mortar: palette.mortar,
  long: 0.22,
  high: 0.11,
};
const walling: BrickWork = { ...paving, high: 0.08 };

/** The near edge of the quay (depth), and the arm that runs out to the left: its side and its end. */
const quayEdge = 5;
const armSide = -1.75;
const armEnd = 15;

/** Distance to the water's edge on the quay, metres; below zero off it. */
function fromWater(X: number, Z: number): number {
  const onFront = quayEdge - Z;
  const onArm = Math.min(armSide - X, armEnd - Z);
  return Math.max(onFront, onArm);
}

/** Width of the granite kerb, length of its stones, metres. */
const kerb = 0.42;
const kerbStone = 1.1;

function paintKerb(out: Exposure, X: number, Z: number, pixel: number, sun: number, sky: number): void {
  const along = (quayEdge - Z < armSide - X ? Z : X) / kerbStone;
  const joint = smoothStep(0.015 + pixel, 0.005, Math.abs(along - Math.floor(along) - 0.5));
  const speck = 0.72 + 0.3 * noise(60 * X, 45 * Z) + 0.25 * noise(11 * X, 9 * Z);
  lit(out, palette.granite, sun * speck * (1 - 0.5 * joint), sky * speck);
}

/** Paving seen from above, with a kerb of granite along the water. */
function paintPaving(layer: Layer): void {
  paint(layer, [-9, view.horizon + 0.1, 9, 9], (x, y, out) => {
    const Z = depthOfLevel(view, y);
    const X = acrossAt(view, x, Z);
    const inside = fromWater(X, Z);
    if (inside < 0) return 0;
    const pixel = Z / (view.focal * layer.scale);
    const long = (Z * Z) / (view.focal * view.eye * layer.scale);
    const wear = 0.8 + 0.35 * fractalNoise(0.8 * X, 0.6 * Z, 3);
    const shade = awningShade(X, Z);
    const sun = daylight.sun * 0.8 * wear * shade;
    const sky = daylight.sky * (0.3 + 0.7 * shade);
    if (inside < kerb) paintKerb(out, X, Z, pixel, sun, sky);
    else paintBricks(out, paving, X, Z, [pixel, long], sun, sky, 0.03);
    return 1;
  });
}

/** The arm's wall above the water, in its own shade, lit by the water. */
function paintQuayWall(layer: Layer): void {
  const [nearX] = project(view, armSide, 0, quayEdge);
  const [farX] = project(view, armSide, 0, armEnd);
  paint(layer, [nearX, view.horizon + 0.05, farX, 0.83], (x, y, out) => {
    const Z = depthOfSide(view, x, armSide);
    const Y = heightAt(view, y, Z);
    if (Z < quayEdge || Z > armEnd || Y > 0 || Y < waterLevel - 0.03) return 0;
    const pixel = (Z * Z) / (view.focal * Math.abs(armSide) * layer.scale);
    const web = smoothStep(0.08, 0.0, Math.abs(noise(2.6 * Z + 3 * Y, 8 * Y + 1.2 * Z) - 0.5));
    const wet = smoothStep(waterLevel + 0.45, waterLevel + 0.15, Y + 0.15 * noise(2 * Z, 3));
    paintBricks(
      out,
      walling,
      Z,
      Y,
      [pixel, Z / (view.focal * layer.scale)],
      0.05,
      0.15,
      0.13 + 0.14 * web * smoothStep(0, waterLevel, Y),
    );
    scale(out, 1 - 0.6 * wet);
    if (Y > -0.22) lit(out, palette.granite, 0.1, 0.2, 0.2);
    const water = heightAt(view, y - pixelOf(layer), Z) - waterLevel;
    return clamp01(0.5 + (water * view.focal * layer.scale) / Z);
  });
}

/** House and awning on the arm: depths, sides and heights in metres. */
export const house = {
  front: 12,
  side: -3.15,
  awningOut: 9.2,
  awningSide: -2.75,
  awningHigh: 2.95,
  awningLow: 2.28,
};

/** Share of the sun on the paving: the awning throws a shade beside and before the house. */
function awningShade(X: number, Z: number): number {
  const soft = 0.12;
  const across = smoothStep(house.awningSide + 0.75 + soft, house.awningSide + 0.75 - soft, X);
  const along = smoothStep(house.awningOut + 0.1 - soft, house.awningOut + 0.1 + soft, Z);
  return 1 - across * along * 0.94;
}

export function paintQuay(layer: Layer): void {
  paintQuayWall(layer);
  paintPaving(layer);
}
