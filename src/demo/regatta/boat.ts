import type { BoatPlan } from '../../../shared/demo/layout/regatta-boats.js';
import { regattaPeople } from '../../../shared/demo/layout/regatta-people.js';
import { edge, lay, type Layer, paint, partLayer, pixelOf } from '../drawing/layer.js';
import { project } from '../drawing/perspective.js';
import { boundsOf, type Point, toStroke } from '../drawing/shapes.js';
import { drawFigure, headMetres } from '../people/figure.js';
import { lit, type Surface, towards } from '../surfaces/surface.js';
import { type Boat, type BoatFrame, paintHull, sheer } from './hull.js';
import { paintJib, paintMainsail, type Rig } from './sail.js';
import { daylight, haze, palette, view, waterLevel } from './setting.js';
import { paintReflection } from './water.js';

const painted = (plan: BoatPlan): Boat => ({
  ...plan,
  hull: palette[plan.hull],
  strake: palette[plan.strake],
  sail: palette[plan.sail],
  panel: plan.panel && palette[plan.panel],
});

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

/** A boat's own measure, where it floats at x, y with `metre` frame heights to the metre. */
function frameOf({ bow, heel }: BoatPlan, [x0, y0]: Point, metre: number, pixel: number): BoatFrame {
  const [cos, sin] = [Math.cos(heel), Math.sin(heel)];
  return {
    pixel: pixel / metre,
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
}

function rigOf(boat: Boat): Rig {
  const { long, mast } = boat;
  const step = 0.12 * long;
  return {
    tack: [step - 0.06, sheer(boat, 0) + 0.35],
    head: [step - 0.06, mast - 0.25],
    boom: 0.5 * long,
    stem: [0.47 * long, sheer(boat, 0.47 * long) + 0.05],
    hounds: [step, mast * 0.82],
  };
}

/** Mast, boom, forestay and shroud. */
function sparsOf(boat: Boat, { tack, boom, stem, hounds }: Rig): Spar[] {
  const step = hounds[0];
  const { plainWood, steel } = palette;
  return [
    { from: [step, 0.2], to: [step, boat.mast], thick: 0.045, surface: plainWood },
    { from: [step, tack[1]], to: [step - boom - 0.1, tack[1] - 0.02], thick: 0.04, surface: plainWood },
    { from: stem, to: hounds, thick: 0.008, surface: steel },
    { from: [step - 0.25, sheer(boat, step)], to: hounds, thick: 0.008, surface: steel },
  ];
}

/** Paints a boat with sails, spars and rigging, its crew (behind the gunwale) and its mirror image. */
export function paintBoat(layer: Layer, plan: BoatPlan): void {
  const boat = painted(plan);
  const { away, long, mast } = boat;
  const floats = project(view, boat.across, waterLevel, away);
  const metre = view.focal / away;
  const air = 1 - Math.exp(-away / 260);
  const reach = [0.66 * long * metre, 1.06 * mast * metre];
  const part = partLayer(layer, [
    floats[0] - reach[0],
    floats[1] - reach[1],
    floats[0] + reach[0],
    floats[1] + 0.05 * metre,
  ]);
  if (!part) return;
  const frame = frameOf(plan, floats, metre, pixelOf(layer));
  const rig = rigOf(boat);
  paintMainsail(part, boat, frame, rig, air);
  paintSpars(part, sparsOf(boat, rig), frame, air);
  paintJib(part, boat, frame, rig, air);
  seatCrew(part, boat, frame, metre);
  paintHull(part, boat, frame, air);
  paintReflection(layer, part, floats[1], Math.min(reach[1], 0.3));
  lay(layer, part);
}
