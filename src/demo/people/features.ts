import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { smoothStep } from '../drawing/noise.js';
import type { Stroke } from '../drawing/relief-colour.js';
import type { Material } from '../drawing/relief.js';
import { toEllipse } from '../drawing/shapes.js';
import type { Surface } from '../surfaces/surface.js';
import type { Outfit } from './wardrobe.js';

/** A place in body units. */
type Place = readonly [x: number, y: number, z: number];

/** Places on a head: from longitude (0 the nose), height and distance from the axis to body units. */
export type OnHead = (longitude: number, height: number, distance: number) => Place;

const moved = ([x, y, z]: Place, dx: number, dy: number): Place => [x + dx, y + dy, z];

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
export function faceStrokes(
  { turn, smile = 0.5, sunglasses }: FigurePlan,
  outfit: Outfit,
  at: OnHead,
): Stroke[] {
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
