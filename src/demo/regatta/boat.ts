import type { BoatPlan } from '../../../shared/demo/layout/regatta-boats.js';
import { regattaPeople } from '../../../shared/demo/layout/regatta-people.js';
import { drawFigure, headMetres } from '../people/figure.js';
import { edge, lay, type Layer, paint, partLayer, pixelOf } from '../drawing/layer.js';
import { clamp01, noise, smoothStep } from '../drawing/noise.js';
import { project } from '../drawing/perspective.js';
import { boundsOf, type Point, toStroke } from '../drawing/shapes.js';
import { lit, type Surface, towards } from '../surfaces/surface.js';
import { paintJib, paintMainsail } from './sail.js';
import { daylight, haze, palette, view, waterLevel } from './setting.js';
import { paintReflection } from './water.js';
import { length3 } from '../drawing/length.js';

/** A boat with its surfaces under the light of the day. */
export interface Boat extends Omit<BoatPlan, 'hull' | 'strake' | 'sail' | 'panel'> {
  readonly hull: Surface;
  readonly strake: Surface;
  readonly sail: Surface;
  readonly panel?: Surface;
}

const painted = (plan: BoatPlan): Boat => ({
  ...plan,
  hull: palette[plan.hull],
  strake: palette[plan.strake],
  sail: palette[plan.sail],
  panel: plan.panel && palette[plan.panel],
});

/** Picks frame places apart into metres along the boat (bow ahead) and above the water. */
export interface BoatFrame {
  readonly toBoat: (x: number, y: number) => readonly [ahead: number, up: number];
  readonly toFrame: (boat: Point) => Point;
  /** Size of a pixel in metres. */
  readonly pixel: number;
}

const sheer = ({ long }: Boat, ahead: number): number => {
  const u = ahead / long;
  return long * (0.088 + 0.11 * u * u + 0.035 * u);
};

function paintHull(layer: Layer, boat: Boat, { toBoat, pixel }: BoatFrame, air: number): void {
  const { long } = boat;
  paint(layer, [-9, -9, 9, 9], (x, y, out) => {
    const [ahead, up] = toBoat(x, y);
    const top = sheer(boat, ahead);
    const down = clamp01((top - up) / top);
    const half = 0.5 * long;
    const stem = half - 0.075 * long * down ** 1.6;
    const stern = -half + 0.045 * long * down;
    const outside = Math.max(up - top, -up - 0.02, ahead - stem, stern - ahead);
    if (outside > pixel) return 0;
    // The side turns under towards the water and away from the viewer towards the ends.
    const turn = 0.75 * down - 0.12;
    const ends = (1.5 * ahead * boat.bow) / long;
    const length = length3(ends, turn, 1);
    const facing = (ends * daylight.toSun[0] - turn * daylight.toSun[1] + daylight.toSun[2]) / length;
    const ripples = noise(5 * ahead + 2 * up, 14 * up + 1.5 * ahead);
    const thrown = smoothStep(0.3, 1, down) * (0.12 + 0.5 * smoothStep(0.55, 0.75, ripples));
    const strake = down < 0.13;
    const boot = up < 0.05 * long * 0.4;
    const surface = strake ? boat.strake : boot ? palette.paintWhite : boat.hull;
    lit(
      out,
      surface,
      daylight.sun * clamp01(0.12 + 0.88 * facing),
      daylight.sky * (0.7 - 0.4 * down),
      0.08 + thrown,
    );
    if (boat.planks && !strake) {
      const lap = (down * 5.5) % 1;
      const grain = 0.82 + 0.36 * noise(2.2 * ahead, 60 * up);
      for (let k = 0; k < 3; k++) out[k] *= grain * (1 - 0.45 * smoothStep(0.12, 0, lap));
    }
    const gloss =
      0.16 * smoothStep(0.1, 0, Math.abs(down - 0.3)) + 0.25 * smoothStep(0.03, 0, Math.abs(down - 0.14));
    for (let k = 0; k < 3; k++) out[k] += gloss * daylight.sun * (0.25 + 0.3 * noise(3 * ahead, 3)) * 0.5;
    towards(out, haze, air);
    return edge(outside, pixel);
  });
}

interface Spar {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly thick: number;
  readonly surface: Surface;
}

function paintSpars(
  layer: Layer,
  spars: readonly Spar[],
  { toBoat, toFrame, pixel }: BoatFrame,
  air: number,
): void {
  for (const { from, to, thick, surface } of spars)
    paint(layer, boundsOf([toFrame(from), toFrame(to)], 0.01), (x, y, out) => {
      const [ahead, up] = toBoat(x, y);
      const r = Math.max(thick, 0.35 * pixel);
      const distance = toStroke(ahead, up, from, to, r);
      if (distance > pixel) return 0;
      lit(out, surface, daylight.sun * 0.75, daylight.sky * 0.8);
      towards(out, haze, air);
      return edge(distance, pixel) * Math.min(1, (1.4 * thick) / pixel + 0.25);
    });
}

/** Seats the crew: bodies upright behind the gunwale, looking about. */
function seatCrew(part: Layer, boat: Boat, { toFrame }: BoatFrame, metre: number): void {
  for (let i = 0; i < boat.crew; i++) {
    const plan = regattaPeople.crew[i];
    const seat = toFrame([(i === 0 ? -0.3 : -0.08) * boat.long, sheer(boat, 0) - 0.95]);
    const stand = { x: seat[0], y: seat[1], size: headMetres * metre };
    const figure = drawFigure(part, stand, { ...plan, turn: plan.turn * boat.bow }, palette, daylight);
    if (figure) lay(part, figure);
  }
}

/** Paints a boat with sails, spars and rigging, its crew (behind the gunwale) and its mirror image. */
export function paintBoat(layer: Layer, plan: BoatPlan): void {
  const boat = painted(plan);
  const { across, away, long, mast, bow, heel } = boat;
  const [x0, y0] = project(view, across, waterLevel, away);
  const metre = view.focal / away;
  const [cos, sin] = [Math.cos(heel), Math.sin(heel)];
  const frame: BoatFrame = {
    pixel: pixelOf(layer) / metre,
    toBoat: (x, y) => {
      const u = (bow * (x - x0)) / metre;
      const v = (y0 - y) / metre;
      return [u * cos - v * sin, v * cos + u * sin];
    },
    toFrame: ([ahead, up]) => [
      x0 + bow * metre * (ahead * cos + up * sin),
      y0 - metre * (up * cos - ahead * sin),
    ],
  };
  const part = partLayer(layer, [
    x0 - 0.66 * long * metre,
    y0 - 1.06 * mast * metre,
    x0 + 0.66 * long * metre,
    y0 + 0.05 * metre,
  ]);
  if (!part) return;
  const air = 1 - Math.exp(-away / 260);
  const foot = sheer(boat, 0) + 0.35;
  const step = 0.12 * long;
  const rig = {
    tack: [step - 0.06, foot],
    head: [step - 0.06, mast - 0.25],
    boom: 0.5 * long,
    stem: [0.47 * long, sheer(boat, 0.47 * long) + 0.05],
    hounds: [step, mast * 0.82],
  } as const;
  paintMainsail(part, boat, frame, rig, air);
  paintSpars(
    part,
    [
      { from: [step, 0.2], to: [step, mast], thick: 0.045, surface: palette.plainWood },
      {
        from: [step, foot],
        to: [step - rig.boom - 0.1, foot - 0.02],
        thick: 0.04,
        surface: palette.plainWood,
      },
      { from: rig.stem, to: rig.hounds, thick: 0.008, surface: palette.steel },
      { from: [step - 0.25, sheer(boat, step)], to: rig.hounds, thick: 0.008, surface: palette.steel },
    ],
    frame,
    air,
  );
  paintJib(part, boat, frame, rig, air);
  seatCrew(part, boat, frame, metre);
  paintHull(part, boat, frame, air);
  paintReflection(layer, part, y0, Math.min(1.1 * mast * metre, 0.3));
  lay(layer, part);
}
