import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import type { SurfaceName } from '../../../shared/demo/reflectances/index.js';
import { fractalNoise, noise } from '../drawing/noise.js';
import type { Material } from '../drawing/relief.js';
import type { Palette } from '../surfaces/palette.js';
import { blendSurfaces, type Surface } from '../surfaces/surface.js';

/** The materials and colours of a figure, under the lights of its scene. */
export interface Outfit {
  readonly skin: Material;
  readonly lips: Surface;
  readonly eyeWhite: Surface;
  readonly dark: Surface;
  readonly shine: Surface;
  readonly hair: Material;
  readonly beard?: Material;
  readonly hat?: Material;
  readonly hatBand?: Surface;
  readonly top: Material;
  readonly bottom: Material;
  readonly scarf?: Material;
  readonly vest?: Material;
  readonly strap: Material;
  readonly gloves?: Material;
  readonly shoes: Material;
  readonly buttons?: Surface;
  readonly stripes?: Surface;
}

/** Cloth that hangs: folds running down, finer towards the waist. Height in body units. */
const clothFolds =
  (strength: number, seed: number) =>
  (x: number, y: number): number =>
    strength *
    (fractalNoise(1.9 * x + seed, 0.75 * y + 0.4 * x, 3) + 0.35 * fractalNoise(5 * x, 2.2 * y + seed, 2));

const cotton = (surface: Surface, seed: number): Material => ({
  surface,
  softness: 0.12,
  folds: clothFolds(0.15, seed),
});

const wool = (surface: Surface, seed: number): Material => ({
  surface,
  softness: 0.16,
  folds: clothFolds(0.11, seed),
  pattern: (x, y) => 0.9 + 0.2 * noise(26 * x, 26 * y),
});

const knitted = (surface: Surface): Material => ({
  surface,
  softness: 0.19,
  folds: (x, y) => 0.009 * Math.sin(56 * x) * (0.6 + 0.4 * Math.sin(44 * y)),
});

const straw = (surface: Surface): Material => ({
  surface,
  pattern: (x, y) => 0.86 + 0.28 * noise(30 * x, 42 * y),
});

const hairOf = (surface: Surface): Material => ({
  surface,
  gloss: 0.07,
  pattern: (x, y) => 0.7 + 0.6 * noise(34 * x + 5 * y, 3 * y),
});

/** Dresses a figure from a palette. */
export function outfitOf(plan: FigurePlan, palette: Palette): Outfit {
  const weave = plan.stuff === 'wool' ? wool : cotton;
  const woven = (name: SurfaceName, seed: number) => weave(palette[name], seed);
  const skin = palette[plan.skin];
  const isDark = plan.skin === 'deep' || plan.skin === 'brown';
  const hatOf = { brim: straw, peak: (surface: Surface) => wool(surface, 5), knitted };
  return {
    skin: { surface: skin, softness: 0.3, gloss: 0.05 },
    lips: isDark ? palette.darkLips : palette.lips,
    eyeWhite: blendSurfaces(palette.white, skin, 0.35),
    dark: palette.charcoal,
    shine: palette.white,
    hair: hairOf(palette[plan.hair]),
    beard: plan.beard && hairOf(palette[plan.beard]),
    hat: plan.hat && hatOf[plan.hat.kind](palette[plan.hat.made]),
    hatBand: plan.hat && palette[plan.hat.band],
    top: woven(plan.top, 2 + plan.tall),
    bottom: woven(plan.bottom, plan.bottom === plan.top ? 2 + plan.tall : 8),
    scarf: plan.scarf && knitted(palette[plan.scarf]),
    vest: plan.vest && { surface: palette[plan.vest], softness: 0.15, folds: clothFolds(0.05, 7) },
    strap: { surface: palette.charcoal },
    gloves: plan.gloves && knitted(palette[plan.gloves]),
    shoes: { surface: palette[plan.shoes ?? 'russet'], gloss: 0.1 },
    buttons: plan.buttons && palette[plan.buttons],
    stripes: plan.stripes && palette[plan.stripes.made],
  };
}
