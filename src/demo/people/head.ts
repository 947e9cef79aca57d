import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import type { Stroke } from '../drawing/relief-colour.js';
import { addEllipsoid, addLimb, type Relief } from '../drawing/relief.js';
import { faceStrokes, type OnHead } from './features.js';
import { addHat, hatStrokes } from './hat.js';
import type { Outfit } from './wardrobe.js';

function placer(cx: number, cy: number, turn: number, tilt: number): OnHead {
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];
  return (longitude, height, distance) => {
    const x = distance * Math.sin(turn + longitude);
    return [cx + x * cos - height * sin, cy + height * cos + x * sin, distance * Math.cos(turn + longitude)];
  };
}

/** Skull, jaw, cheeks, nose, ears and neck; one head high, its middle at cx, cy. */
function addFace(relief: Relief, { turn }: FigurePlan, { skin }: Outfit, at: OnHead): void {
  const side = Math.abs(Math.sin(turn));
  const melt = 0.12;
  addLimb(relief, skin, { from: at(Math.PI, -0.3, 0.06), to: at(Math.PI, -0.95, 0.12), radii: [0.19, 0.23] });
  addEllipsoid(relief, skin, {
    centre: at(Math.PI, 0.06, 0.05),
    radii: [0.36 + 0.08 * side, 0.44, 0.44],
    melt,
  });
  addEllipsoid(relief, skin, { centre: at(0, -0.17, 0.08), radii: [0.285, 0.32, 0.31], melt });
  addEllipsoid(relief, skin, { centre: at(0, -0.4, 0.2), radii: [0.12, 0.1, 0.12], melt });
  for (const s of [-1, 1]) {
    addEllipsoid(relief, skin, { centre: at(s * 1.62, -0.03, 0.37), radii: [0.05, 0.11, 0.06], melt: 0.03 });
    addEllipsoid(relief, skin, { centre: at(s * 0.62, -0.13, 0.27), radii: [0.12, 0.1, 0.11], melt });
  }
  addEllipsoid(relief, skin, { centre: at(0, 0.12, 0.28), radii: [0.24, 0.06, 0.11], melt });
  addLimb(relief, skin, {
    from: at(0, 0.06, 0.36),
    to: at(0, -0.11, 0.43),
    radii: [0.035, 0.052],
    melt: 0.05,
  });
  addEllipsoid(relief, skin, { centre: at(0, -0.12, 0.425), radii: [0.075, 0.045, 0.06], melt: 0.04 });
  addEllipsoid(relief, skin, { centre: at(0, -0.265, 0.34), radii: [0.11, 0.055, 0.07], melt: 0.06 });
}

function addHair(relief: Relief, { hairCut, turn }: FigurePlan, { hair, beard }: Outfit, at: OnHead): void {
  if (beard) addEllipsoid(relief, beard, { centre: at(0, -0.36, 0.1), radii: [0.29, 0.2, 0.29], melt: 0.03 });
  if (hairCut === 'none') return;
  const side = Math.abs(Math.sin(turn));
  addEllipsoid(relief, hair, { centre: at(Math.PI, 0.14, 0.09), radii: [0.4 + 0.07 * side, 0.4, 0.46] });
  if (hairCut === 'short') return;
  const down = hairCut === 'long' ? -0.85 : -0.36;
  for (const s of [-1, 1])
    addLimb(relief, hair, {
      from: at(s * 1.85, 0.1, 0.33),
      to: at(s * 1.8, down, 0.34),
      radii: [0.14, 0.13],
      melt: 0.05,
    });
  addEllipsoid(relief, hair, { centre: at(Math.PI, down / 2, 0.26), radii: [0.34, 0.5, 0.2], melt: 0.05 });
}

/** Adds a head, one unit from chin to crown, its middle at the height y, and returns what is drawn on it. */
export function addHead(relief: Relief, plan: FigurePlan, outfit: Outfit, y: number): Stroke[] {
  const at = placer(0, y, plan.turn, plan.tilt ?? 0);
  addFace(relief, plan, outfit, at);
  addHair(relief, plan, outfit, at);
  addHat(relief, plan, outfit, at);
  return [...faceStrokes(plan, outfit, at), ...hatStrokes(plan, outfit, at)];
}
