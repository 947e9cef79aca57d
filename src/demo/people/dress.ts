import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { length2 } from '../drawing/length.js';
import { smoothStep } from '../drawing/noise.js';
import type { Stroke } from '../drawing/relief-colour.js';
import { addLimb, type Relief } from '../drawing/relief.js';
import type { Build } from './build.js';
import type { Outfit } from './wardrobe.js';

/** Scarf and vest: what is worn over the top. */
export function addExtras(
  relief: Relief,
  { broad }: FigurePlan,
  { vest, scarf }: Outfit,
  { level, b }: Build,
): void {
  const w = broad * b;
  if (vest) {
    const low = [0, level(1.75), 0.1 * b] as const;
    const over = { flat: 0.66, melt: 0.04, hem: level(1.95) };
    addLimb(relief, vest, { from: [0, level(0.8), 0.1 * b], to: low, radii: [0.62 * w, 0.6 * w], ...over });
    for (const s of [-1, 1])
      addLimb(relief, vest, {
        from: [0.34 * s * w, level(0.22), 0.15 * b],
        to: [0.36 * s * w, level(0.8), 0.2 * b],
        radii: [0.15 * b, 0.2 * b],
        melt: 0.05,
      });
  }
  if (!scarf) return;
  addLimb(relief, scarf, {
    from: [-0.2 * b, level(-0.05), 0.1],
    to: [0.22 * b, level(0), 0.12],
    radii: [0.19, 0.19],
    melt: 0.04,
  });
  addLimb(relief, scarf, {
    from: [0.16 * b, level(0.1), 0.3 * b],
    to: [0.3 * b, level(1.35), 0.42 * b],
    radii: [0.14 * b, 0.17 * b],
    flat: 0.5,
    hem: level(1.42),
  });
}

function stripes({ stripes: plan }: FigurePlan, { top, stripes }: Outfit, { level, b }: Build): Stroke[] {
  if (!plan || !stripes) return [];
  return [
    {
      surface: stripes,
      on: top,
      bounds: [-1.2 * b, level(2.6), 1.2 * b, level(0.25)],
      cover: (x, y) => {
        const at = (level(0) - y + 0.05 * x * x) / plan.width;
        return 0.92 * smoothStep(0.28, 0.22, Math.abs((at % 1) - 0.5));
      },
    },
  ];
}

/** The open neck: skin in a point. */
function opening({ openTo }: FigurePlan, { top, skin }: Outfit, { level, b }: Build): Stroke[] {
  if (!openTo) return [];
  const high = level(-0.3);
  const low = level(openTo);
  return [
    {
      surface: skin.surface,
      on: top,
      bounds: [-0.4 * b, low, 0.4 * b, high],
      cover: (x, y) => {
        const down = (level(-0.02) - y) / (level(-0.02) - low);
        return smoothStep(0.02, -0.02, Math.abs(x) - 0.25 * b * (1 - down));
      },
    },
  ];
}

function buttons(_plan: FigurePlan, { top, bottom, buttons: made }: Outfit, { level, b }: Build): Stroke[] {
  if (!made) return [];
  return [0.75, 1.2, 1.65, 2.1, 2.7, 3.3].map((below) => ({
    surface: made,
    on: below > 2.5 ? bottom : top,
    bounds: [-0.1, level(below) - 0.1, 0.1, level(below) + 0.1],
    cover: (x, y) => smoothStep(0.055 * b, 0.035 * b, length2(x - 0.03, y - level(below))),
  }));
}

/** Buckled straps across the vest, and the slit down its middle. */
function straps(_plan: FigurePlan, { vest, strap }: Outfit, { level, b }: Build): Stroke[] {
  if (!vest) return [];
  const band = (below: number): Stroke => ({
    surface: strap.surface,
    on: vest,
    bounds: [-0.9 * b, level(below + 0.1), 0.9 * b, level(below - 0.1)],
    cover: (x, y) => 0.9 * smoothStep(0.05 * b, 0.035 * b, Math.abs(y - level(below) + 0.05 * x * x)),
  });
  const slit: Stroke = {
    surface: strap.surface,
    on: vest,
    bounds: [-0.05 * b, level(2), 0.05 * b, level(0)],
    cover: (x) => 0.7 * smoothStep(0.035 * b, 0.015 * b, Math.abs(x)),
  };
  return [slit, band(1.2), band(1.65)];
}

/** What is drawn on the clothes. */
export function clothesStrokes(plan: FigurePlan, outfit: Outfit, build: Build): Stroke[] {
  return [stripes, opening, buttons, straps].flatMap((drawn) => drawn(plan, outfit, build));
}
