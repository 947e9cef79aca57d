import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { addEllipsoid, addLimb, type Relief } from '../drawing/relief.js';
import type { Outfit } from './wardrobe.js';

/** Proportions of a figure in body units, a unit to a head. */
export interface Build {
  /** Height of a place given in heads of an adult below the pit of the neck. */
  readonly level: (below: number) => number;
  /** Size of the body below the neck beside an adult's. */
  readonly b: number;
  /** The middle of the head. */
  readonly head: number;
}

export function buildOf({ tall }: FigurePlan): Build {
  const head = tall - 0.5;
  const b = (tall - 1.22) / 6.1;
  return { head, b, level: (below) => head - 0.72 - below * b };
}

function addHips(
  relief: Relief,
  { broad, skirtTo }: FigurePlan,
  { bottom }: Outfit,
  { level, b }: Build,
): void {
  const w = broad * b;
  addLimb(relief, bottom, {
    from: [0, level(2.1), -0.02],
    to: [0, level(2.7), -0.02],
    radii: [0.54 * w, 0.6 * w],
    flat: 0.62,
    melt: 0.08,
    hem: level(3),
  });
  if (skirtTo === undefined) return;
  addLimb(relief, bottom, {
    from: [0, level(2.2), 0],
    to: [0, level(skirtTo + 0.5), 0],
    radii: [0.58 * w, 0.92 * w],
    flat: 0.6,
    melt: 0.05,
    hem: level(skirtTo),
  });
}

/** Shoulders, chest and waist in the top, hips and skirt in the bottom. */
export function addTorso(relief: Relief, plan: FigurePlan, outfit: Outfit, build: Build): void {
  const { broad, topTo = 2.55 } = plan;
  const { top } = outfit;
  const { level, b } = build;
  const w = broad * b;
  const melt = 0.14;
  addHips(relief, plan, outfit, build);
  for (const s of [-1, 1])
    addLimb(relief, top, {
      from: [0.1 * s * w, level(0.16), -0.08],
      to: [0.62 * s * w, level(0.36), -0.05],
      radii: [0.2 * b, 0.22 * b],
      melt,
    });
  const waist = [0, level(1.7), 0] as const;
  addLimb(relief, top, {
    from: [0, level(0.62), 0],
    to: waist,
    radii: [0.68 * w, 0.55 * w],
    flat: 0.62,
    melt,
  });
  addLimb(relief, top, {
    from: waist,
    to: [0, level(2.6), 0],
    radii: [0.55 * w, 0.66 * w],
    flat: 0.66,
    melt,
    hem: level(topTo),
  });
}

export function addLegs(
  relief: Relief,
  { skirtTo = 0 }: FigurePlan,
  outfit: Outfit,
  { level, b }: Build,
): void {
  // Under a skirt that ends above the ankle, the legs are bare or in stockings.
  const made = skirtTo > 0 && skirtTo < 5.5 ? (outfit.gloves ? outfit.strap : outfit.skin) : outfit.bottom;
  const covered = skirtTo > 0 ? skirtTo - 0.4 : 0;
  for (const s of [-1, 1]) {
    const hip = [0.27 * s * b, level(2.65), -0.02] as const;
    const knee = [0.29 * s * b, level(4.45), 0.04] as const;
    const ankle = [0.3 * s * b, level(6.2), -0.03] as const;
    if (covered < 4.45)
      addLimb(relief, made, {
        from: covered ? knee : hip,
        to: knee,
        radii: [covered ? 0.22 * b : 0.34 * b, 0.24 * b],
        melt: 0.05,
      });
    addLimb(relief, made, { from: knee, to: ankle, radii: [0.22 * b, 0.15 * b], melt: 0.05 });
    addEllipsoid(relief, outfit.shoes, {
      centre: [0.34 * s * b, level(6.42), 0.1],
      radii: [0.2 * b, 0.12 * b, 0.3 * b],
    });
  }
}
