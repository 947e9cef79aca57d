import { smoothStep } from '../drawing/noise.js';
import { addEllipsoid, addLimb, type Material, type Relief } from '../drawing/relief.js';
import type { Stroke } from '../drawing/relief-light.js';
import { toEllipse } from '../drawing/shapes.js';
import type { Surface } from '../surfaces/surface.js';
import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { addHat, hatStrokes } from './hat.js';
import type { Outfit } from './wardrobe.js';

type Place = readonly [x: number, y: number, z: number];

/** Places on a head: from longitude (0 the nose), height and distance from the axis to body units. */
export type OnHead = (longitude: number, height: number, distance: number) => Place;

function placer(cx: number, cy: number, turn: number, tilt: number): OnHead {
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];
  return (longitude, height, distance) => {
    const x = distance * Math.sin(turn + longitude);
    return [cx + x * cos - height * sin, cy + height * cos + x * sin, distance * Math.cos(turn + longitude)];
  };
}

const moved = ([x, y, z]: Place, dx: number, dy: number): Place => [x + dx, y + dy, z];

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

/** Draws on the skin of a face. */
function pencil(on: Material) {
  return {
    /** A soft-edged ellipse. */
    patch: (
      surface: Surface,
      [cx, cy]: Place,
      rx: number,
      ry: number,
      strength: number,
      soft: number,
    ): Stroke => ({
      surface,
      on,
      bounds: [cx - rx - soft, cy - ry - soft, cx + rx + soft, cy + ry + soft],
      cover: (x, y) => strength * smoothStep(soft, -soft, toEllipse(x, y, cx, cy, rx, ry)),
    }),
    /** A line bent like a bow. */
    bow: (
      surface: Surface,
      [cx, cy]: Place,
      half: number,
      rise: number,
      thick: number,
      strength: number,
    ): Stroke => ({
      surface,
      on,
      bounds: [cx - half, cy - Math.abs(rise) - thick, cx + half, cy + Math.abs(rise) + thick],
      cover: (x, y) => {
        const u = (x - cx) / half;
        const line = cy + rise * (0.5 - u * u);
        return strength * smoothStep(thick, 0.25 * thick, Math.abs(y - line) * (1 + 0.6 * u * u));
      },
    }),
  };
}

/** One eye: socket, white, iris with a glint, lids and brow. `facing` 1 when it looks at the viewer. */
function eyeStrokes(outfit: Outfit, eye: Place, facing: number, turn: number): Stroke[] {
  const { patch, bow } = pencil(outfit.skin);
  const { dark, eyeWhite, shine, hair } = outfit;
  const iris = moved(eye, 0.016 * Math.sin(turn), 0.004);
  return [
    patch(dark, moved(eye, 0, 0.016), 0.09 * facing, 0.048, 0.3, 0.036),
    patch(eyeWhite, eye, 0.064 * facing, 0.026, 0.75, 0.009),
    patch(dark, iris, 0.03, 0.031, 0.95, 0.008),
    patch(shine, moved(iris, -0.012, 0.012), 0.007, 0.008, 0.7, 0.004),
    bow(dark, moved(eye, 0, 0.022), 0.076 * facing, 0.02, 0.014, 0.9),
    bow(dark, moved(eye, 0, -0.028), 0.055 * facing, -0.012, 0.007, 0.3),
    bow(hair.surface, moved(eye, 0, 0.105), 0.092 * facing, 0.034, 0.024, 0.7),
  ];
}

/** Eyes, brows, lips, and the colour of cheeks: what is too small to be a form. */
function faceStrokes({ turn, smile = 0.5, sunglasses }: FigurePlan, outfit: Outfit, at: OnHead): Stroke[] {
  const { patch, bow } = pencil(outfit.skin);
  const { lips, dark } = outfit;
  const shows = (longitude: number) => Math.cos(turn + longitude);
  const sides = [-1, 1].filter((s) => shows(s * 0.42) > 0.15);
  const eyes = sides.flatMap((s) => {
    const facing = shows(s * 0.42);
    const eye = at(s * 0.42, 0.005, 0.36);
    const cheek = patch(lips, at(s * 0.66, -0.16, 0.36), 0.11 * facing, 0.075, 0.24, 0.07);
    const glass = patch(dark, eye, 0.115 * facing, 0.075, 0.96, 0.008);
    return [cheek, ...(sunglasses ? [glass] : eyeStrokes(outfit, eye, facing, turn))];
  });
  const bridge = sunglasses && shows(0) > 0 ? [bow(dark, at(0, 0.03, 0.4), 0.06, 0.01, 0.012, 0.9)] : [];
  if (shows(0) < 0.1) return eyes;
  const mouth = at(0, -0.278, 0.38);
  const wide = (0.1 + 0.03 * smile) * Math.max(0.35, shows(0));
  return [
    ...eyes,
    ...bridge,
    patch(lips, moved(mouth, 0, 0.006), 0.92 * wide, 0.034, 0.75, 0.014),
    patch(lips, moved(mouth, 0, 0.03), 0.5 * wide, 0.014, 0.5, 0.012),
    bow(dark, moved(mouth, 0, 0.012 * smile), 1.12 * wide, -0.052 * smile, 0.012, 0.75),
    patch(dark, moved(mouth, 0, -0.075), 0.6 * wide, 0.012, 0.18, 0.02),
    ...[-0.1, 0.1].map((side) => patch(dark, at(side, -0.158, 0.44), 0.016, 0.009, 0.5, 0.008)),
  ];
}

/** Adds a head, one unit from chin to crown, its middle at the height y, and returns what is drawn on it. */
export function addHead(relief: Relief, plan: FigurePlan, outfit: Outfit, y: number): Stroke[] {
  const at = placer(0, y, plan.turn, plan.tilt ?? 0);
  addFace(relief, plan, outfit, at);
  addHair(relief, plan, outfit, at);
  addHat(relief, plan, outfit, at);
  return [...faceStrokes(plan, outfit, at), ...hatStrokes(plan, outfit, at)];
}
