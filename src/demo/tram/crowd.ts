import { lay, type Layer } from '../drawing/layer.js';
import { noise } from '../drawing/noise.js';
import { project } from '../drawing/perspective.js';
import type { Material } from '../drawing/relief.js';
import { clothFolds, drawPerson } from '../people/figure.js';
import { type Clothes, hanging, type HeadLook, type Person } from '../people/person.js';
import { throwShadow } from '../people/shadow.js';
import type { Surface } from '../surfaces/surface.js';
import { daylight, palette, view } from './setting.js';

const head = 0.235;

const flesh = (surface: Surface): Material => ({ surface, softness: 0.3, gloss: 0.05 });
const hairOf = (surface: Surface): Material => ({
  surface,
  gloss: 0.07,
  pattern: (x, y) => 0.7 + 0.6 * noise(34 * x + 5 * y, 3 * y),
});
const coat = (surface: Surface, seed: number): Material => ({
  surface,
  softness: 0.15,
  folds: clothFolds(0.11, seed),
  pattern: (x, y) => 0.9 + 0.2 * noise(26 * x, 26 * y),
});
const knitted = (surface: Surface): Material => ({
  surface,
  softness: 0.2,
  folds: (x, y) => 0.012 * Math.sin(52 * x) * (0.6 + 0.4 * Math.sin(40 * y)),
});

const face = (look: Partial<HeadLook> & Pick<HeadLook, 'turn'>, skin: Surface, hair: Surface): HeadLook => ({
  skin: flesh(skin),
  lips: skin === palette.deep || skin === palette.brown ? palette.darkLips : palette.lips,
  hair: hairOf(hair),
  hairCut: 'short',
  eyeWhite: palette.white,
  dark: palette.charcoal,
  ...look,
});

const dressed = (clothes: Partial<Clothes> & Pick<Clothes, 'top'>): Clothes => ({
  bottom: coat(palette.charcoal, 4),
  shoes: { surface: palette.darkWood },
  gloves: knitted(palette.charcoal),
  ...clothes,
});

const red = coat(palette.red, 2);
const woman: Person = {
  tall: 7.3,
  broad: 0.95,
  head: face(
    {
      turn: -0.5,
      tilt: 0.04,
      hairCut: 'long',
      hat: { kind: 'knitted', made: knitted(palette.cream), band: palette.wine },
      smile: 0.8,
    },
    palette.fair,
    palette.hairBlond,
  ),
  clothes: dressed({
    top: red,
    bottom: red,
    skirtTo: 4.9,
    scarf: knitted(palette.cream),
    buttons: palette.charcoal,
    gloves: knitted(palette.cream),
  }),
  left: { elbow: [-1.1, 1.8, 0.05], hand: [-0.4, 2.3, 0.6] },
  right: { elbow: [1.1, 1.85, 0.05], hand: [0.45, 2.4, 0.62] },
};

const navy = coat(palette.navy, 7);
const man: Person = {
  tall: 7.6,
  broad: 1.1,
  head: face(
    {
      turn: -0.28,
      hat: { kind: 'peak', made: coat(palette.charcoal, 3), band: palette.charcoal },
      smile: 0.4,
    },
    palette.brown,
    palette.hairBlack,
  ),
  clothes: dressed({ top: navy, bottom: navy, skirtTo: 4.4, scarf: knitted(palette.mustard) }),
  left: hanging(-1),
  right: hanging(1),
};

const child: Person = {
  tall: 5.7,
  broad: 1.02,
  head: face(
    {
      turn: -0.15,
      tilt: -0.06,
      hat: { kind: 'knitted', made: knitted(palette.red), band: palette.white },
      smile: 1.1,
    },
    palette.tanned,
    palette.hairBrown,
  ),
  clothes: dressed({
    top: coat(palette.green, 4),
    topTo: 2.9,
    scarf: knitted(palette.yellow),
    bottom: coat(palette.navy, 8),
    gloves: knitted(palette.red),
  }),
  left: hanging(-1),
  right: { elbow: [1.08, 1.7, 0.1], hand: [1.15, 0.9, 0.5] },
};

const stroller: Person = {
  ...woman,
  head: face(
    { turn: 2.6, hairCut: 'bob', hat: { kind: 'knitted', made: knitted(palette.blue), band: palette.white } },
    palette.fair,
    palette.hairBrown,
  ),
  clothes: dressed({ top: coat(palette.khaki, 5), bottom: coat(palette.khaki, 5), skirtTo: 4.6 }),
  left: hanging(-1),
  right: hanging(1),
};

function stand(layer: Layer, person: Person, X: number, Z: number, sunShare = 1): void {
  const [x, y] = project(view, X, 0, Z);
  const part = drawPerson(layer, { x, y, size: (head * view.focal) / Z }, person, {
    ...daylight,
    sun: daylight.sun * sunShare,
  });
  if (!part) return;
  if (sunShare > 0) throwShadow(layer, part, view, daylight.toSun, X, Z, [0.34, 0.38, 0.46]);
  lay(layer, part);
}

export function drawCrowd(layer: Layer): void {
  stand(layer, stroller, 3.1, 15.5, 0);
  stand(layer, { ...man, head: { ...man.head, turn: 2.2 } }, 2.5, 16, 0);
  stand(layer, man, 1.02, 2.75);
  stand(layer, woman, 0.42, 2.5);
  stand(layer, child, 0.79, 2.2);
}
