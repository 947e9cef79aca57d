import type { ArmPlan, FigurePlan } from '../../../shared/demo/layout/figure.js';
import { addEllipsoid, addLimb, type Material, type Relief } from '../drawing/relief.js';
import type { Build } from './build.js';
import type { Outfit } from './wardrobe.js';

type Spot = readonly [x: number, y: number, z: number];

const between = (a: Spot, c: Spot, t: number): Spot => [
  a[0] + t * (c[0] - a[0]),
  a[1] + t * (c[1] - a[1]),
  a[2] + t * (c[2] - a[2]),
];

/** A loosely closed hand: palm, four fingers, thumb. */
function addHand(
  relief: Relief,
  made: Material,
  [x, y, z]: Spot,
  along: number,
  side: -1 | 1,
  b: number,
): void {
  const [cos, sin] = [Math.cos(along), Math.sin(along)];
  const spot = (ahead: number, aside: number, before: number): Spot => [
    x + b * (ahead * cos - aside * sin),
    y + b * (ahead * sin + aside * cos),
    z + b * before,
  ];
  const centre = spot(0.08, 0, 0);
  addEllipsoid(relief, made, { centre, radii: [0.16 * b, 0.12 * b, 0.08 * b], turn: along, melt: 0.03 });
  for (const finger of [-0.085, -0.03, 0.03, 0.085])
    addLimb(relief, made, {
      from: spot(0.16, finger, 0.03),
      to: spot(0.32 - 6 * finger * finger, 0.9 * finger, -0.02),
      radii: [0.036 * b, 0.028 * b],
      melt: 0.008,
    });
  addLimb(relief, made, {
    from: spot(0.02, -0.09 * side, 0.04),
    to: spot(0.19, -0.15 * side, 0.07),
    radii: [0.045 * b, 0.034 * b],
    melt: 0.015,
  });
}

/** An arm from the shoulder to the finger tips, with its sleeve. */
export function addArm(
  relief: Relief,
  { sleeveTo = 1, broad }: FigurePlan,
  { skin, top, gloves }: Outfit,
  { elbow, hand }: ArmPlan,
  side: -1 | 1,
  { level, b }: Build,
): void {
  const shoulderAt: Spot = [0.66 * side * broad * b, level(0.42), -0.04];
  const elbowAt: Spot = [elbow[0] * b, level(elbow[1]), elbow[2] * b];
  const handAt: Spot = [hand[0] * b, level(hand[1]), hand[2] * b];
  addLimb(relief, skin, { from: shoulderAt, to: elbowAt, radii: [0.19 * b, 0.145 * b] });
  addLimb(relief, skin, { from: elbowAt, to: handAt, radii: [0.145 * b, 0.1 * b], melt: 0.04 });
  addLimb(relief, top, {
    from: shoulderAt,
    to: between(shoulderAt, elbowAt, Math.min(1, 2 * sleeveTo)),
    radii: [0.25 * b, 0.21 * b],
    melt: 0.05,
  });
  if (sleeveTo > 0.5)
    addLimb(relief, top, {
      from: elbowAt,
      to: between(elbowAt, handAt, 2 * sleeveTo - 1),
      radii: [0.21 * b, 0.155 * b],
      melt: 0.05,
    });
  const along = Math.atan2(handAt[1] - elbowAt[1], handAt[0] - elbowAt[0]);
  addHand(relief, gloves ?? skin, handAt, along, side, b);
}
