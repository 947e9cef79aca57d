import { type BrickWork, paintBricks } from '../drawing/brick.js';
import { edge, type Layer, paintFine } from '../drawing/layer.js';
import { length2 } from '../drawing/length.js';
import { cellRandom, fractalNoise, mix, noise, smoothStep } from '../drawing/noise.js';
import { acrossAt, depthOfSide, heightAt, project } from '../drawing/perspective.js';
import { toBox } from '../drawing/shapes.js';
import { type Exposure, lit, type Surface, towards } from '../surfaces/surface.js';
import { daylight, haze, housesAt, lampLight, palette, pastTram, view } from './setting.js';

interface House {
  readonly from: number;
  readonly to: number;
  readonly high: number;
  readonly bricks: BrickWork['bricks'];
}

const { brick, brickDark, brickPale } = palette;
const houses: readonly House[] = [
  { from: 4, to: 12.2, high: 12.5, bricks: [brick, brickDark, brickPale] },
  { from: 12.2, to: 19.5, high: 10.2, bricks: [brickPale, brick, palette.ochrePlaster] },
  { from: 19.5, to: 28, high: 12, bricks: [brickDark, brick, brickDark] },
  { from: 28, to: 39, high: 9.6, bricks: [brick, brickPale, brick] },
  { from: 39, to: 55, high: 11.4, bricks: [brickPale, brick, brickDark] },
  { from: 55, to: 80, high: 10, bricks: [brick, brickDark, brick] },
];

const storey = 3.2;
const bay = 2.35;

/** A pane, lit from within or mirroring the sky. `curtain` 0..1 picks which. */
function paintPane(out: Exposure, curtain: number, up: number, along: number): void {
  if (curtain < 0.42) {
    const warm = (0.42 + 0.5 * up) * (0.75 + 0.5 * noise(3 * along, 2 * up));
    for (let k = 0; k < 3; k++) out[k] = 0.62 * warm * lampLight[k];
    return;
  }
  lit(out, palette.glass, 0.3, 2.2 + 2 * curtain * fractalNoise(2 * along, 2 * up, 2));
}

/** Windows of the upper floors and of the ground floor; false where there is wall. */
function paintWindow(out: Exposure, Z: number, Y: number, index: number, sun: number): boolean {
  const floor = Math.floor(Y / storey);
  const column = Math.floor(Z / bay);
  const u = Z - (column + 0.5) * bay;
  const v = Y - floor * storey;
  const half = floor === 0 ? 0.72 : 0.52;
  const frame = toBox(u, v, -half, 0.85, half, floor === 0 ? 2.55 : 2.65, 0.02);
  const snowOnSill = toBox(u, v, -half - 0.14, 0.74, half + 0.14, 0.9 + 0.03 * noise(6 * Z, floor), 0.03);
  if (snowOnSill < 0) {
    lit(out, palette.snow, sun * 0.75, daylight.sky, 0.05);
    return true;
  }
  if (frame > 0.1) return false;
  if (frame > 0.02) {
    lit(out, palette.granite, sun * 0.9, daylight.sky, 0.1);
    return true;
  }
  const bars = Math.min(Math.abs(u), Math.abs(v - 1.95));
  // The far reveal catches the sun, the near one shades the pane.
  const shaded = smoothStep(-half + 0.02, -half + 0.16, u);
  if (bars < 0.035 || frame > -0.06)
    lit(out, palette.paintWhite, sun * 0.6 * shaded, daylight.sky * 0.7, 0.05);
  else paintPane(out, cellRandom(column + 31 * index, floor), (v - 0.85) / 1.8, Z);
  return true;
}

/** The doorway of the nearest house: a porch set deep into the wall, hardly lit. */
export const doorway = { from: 9.75, to: 11.25, high: 2.75 };

function paintDoorway(out: Exposure, Z: number, Y: number, sun: number): boolean {
  const opening = toBox(Z, Y, doorway.from, -1, doorway.to, doorway.high, 0.3);
  if (opening > 0.22) return false;
  if (opening > 0) {
    lit(out, palette.granite, sun * (0.9 + 0.2 * noise(8 * Z, 8 * Y)), daylight.sky, 0.12);
    return true;
  }
  const door = toBox(Z, Y, 10.05, 0.15, 11.0, 2.3, 0.03);
  const panels = Math.min(
    Math.abs(toBox(Z, Y, 10.2, 0.35, 10.85, 1.05, 0.02)),
    Math.abs(toBox(Z, Y, 10.2, 1.2, 10.85, 2.1, 0.02)),
  );
  // The lower the place, the more of the snow's light gets in; the near side of the porch hides the rest.
  const deep = (1.25 - smoothStep(0, 2.4, Y)) * (0.55 + 0.6 * smoothStep(doorway.from, doorway.to, Z));
  if (door < 0) {
    const moulding = panels < 0.035 ? 0.35 : 1;
    lit(out, palette.varnishedWood, 0, 0.07 * deep * moulding, 0.16 * deep * moulding);
  } else lit(out, palette.brickDark, 0, 0.07 * deep, 0.1 * deep);
  const knob = length2(Z - 10.15, Y - 1.1);
  if (knob < 0.05) lit(out, palette.mustard, 0, 0.35, 0.2);
  return true;
}

function paintFacade(out: Exposure, house: House, index: number, Z: number, Y: number, pixel: number): void {
  const free = pastTram(housesAt, Y, Z);
  const sun = daylight.sun * 0.62 * free;
  const cornice = house.high - Y;
  if (cornice < 0.12) return lit(out, palette.snow, sun, daylight.sky, 0.05);
  if (cornice < 0.55)
    return lit(out, palette.plaster, sun * (cornice > 0.42 ? 0.25 : 0.95), daylight.sky * 0.8, 0.1);
  if (index === 0 && paintDoorway(out, Z, Y, sun)) return;
  if (
    cornice > 1 &&
    !(index === 0 && Z > 9.2 && Z < 11.8 && Y < storey) &&
    paintWindow(out, Z, Y, index, sun)
  )
    return;
  if (Y < 0.6)
    return lit(out, palette.granite, sun * (0.7 + 0.4 * noise(5 * Z, 7 * Y)), daylight.sky * 0.7, 0.16);
  const work: BrickWork = { bricks: house.bricks, mortar: palette.mortar, long: 0.24, high: 0.085 };
  paintBricks(
    out,
    work,
    Z,
    Y,
    [pixel * (Z / housesAt), pixel],
    sun,
    daylight.sky * 0.7,
    0.14 * smoothStep(4, 0, Y) + 0.04,
  );
}

/** The row of houses to the right, running away from the viewer. */
export function paintHouses(layer: Layer): void {
  const [farX] = project(view, housesAt, 0, 80);
  paintFine(layer, [farX, -9, 9, 9], (x, y, out) => {
    const Z = depthOfSide(view, x, housesAt);
    const Y = heightAt(view, y, Z);
    const index = houses.findIndex(({ from, to }) => Z >= from && Z < to);
    if (index < 0) return 0;
    const house = houses[index];
    const pixel = Z / (view.focal * layer.scale);
    if (Y > house.high + pixel || Y < -pixel) return 0;
    paintFacade(out, house, index, Z, Y, pixel);
    towards(out, haze, 0.8 * (1 - Math.exp(-Z / 75)));
    return Math.min(edge(Y - house.high, pixel), edge(-Y, pixel));
  });
}

/** The church: where it stands across, where its spire begins and ends, metres. */
const tower = { at: 3.2, eaves: 19, top: 33 } as const;

const farWalls = (): Surface[] => [palette.brick, palette.plaster, palette.brickPale, palette.ochrePlaster];

/** What closes the street: houses in the haze with snow on their roofs, and a church tower. */
export function paintFarEnd(layer: Layer): void {
  const Z = 95;
  const walls = farWalls();
  paintFine(layer, [-9, 0.1, 9, view.horizon + 0.02], (x, y, out) => {
    const X = acrossAt(view, x, Z);
    const Y = heightAt(view, y, Z);
    const column = Math.floor(X / 7.5);
    const u = X / 7.5 - column;
    const eaves = 6.5 + 4 * cellRandom(column, 40);
    const ridge = eaves + 2.8 * (1 - Math.abs(2 * u - 1));
    const fromTower = Math.abs(X - tower.at);
    const isTower =
      Y < tower.eaves ? fromTower < 2.2 : fromTower < (2.4 * (tower.top - Y)) / (tower.top - tower.eaves);
    if (Y > ridge && !isTower) return 0;
    const lower = 0.75 + 0.25 * noise(3 * X, 3 * Y);
    if (isTower)
      lit(
        out,
        Y > 20 ? palette.slate : palette.brickPale,
        daylight.sun * (X < -3.5 ? 0.6 : 0.35),
        daylight.sky,
      );
    else if (Y > eaves) lit(out, palette.snow, daylight.sun * 0.45 * (u < 0.5 ? 1 : 0.6), daylight.sky);
    else {
      lit(out, walls[Math.floor(4 * cellRandom(column, 41))], daylight.sun * 0.5 * lower, daylight.sky);
      const window =
        Math.abs(((X / 2.2) % 1) + (X < 0 ? 1 : 0) - 0.5) < 0.22 && Math.abs(((Y / 3) % 1) - 0.5) < 0.26;
      if (window && Y > 0.5) {
        const warm = cellRandom(Math.floor(X / 2.2), Math.floor(Y / 3)) < 0.3 ? 0.5 : 0.06;
        for (let k = 0; k < 3; k++) out[k] = mix(0.1, warm * lampLight[k], 0.9);
      }
    }
    towards(out, haze, 0.66);
    return 1;
  });
}
