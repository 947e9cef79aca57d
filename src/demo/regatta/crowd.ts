import { lay, type Layer } from '../drawing/layer.js';
import { noise } from '../drawing/noise.js';
import { project } from '../drawing/perspective.js';
import type { Material } from '../drawing/relief.js';
import { clothFolds, drawPerson } from '../people/figure.js';
import { type Clothes, hanging, type HeadLook, type Person } from '../people/person.js';
import { throwShadow } from '../people/shadow.js';
import type { Surface } from '../surfaces/surface.js';
import { daylight, palette, view } from './setting.js';

/** Height of a head, metres. */
const head = 0.235;

const flesh = (surface: Surface): Material => ({ surface, softness: 0.3, gloss: 0.05 });
const hairOf = (surface: Surface): Material => ({
  surface,
  gloss: 0.07,
  pattern: (x, y) => 0.7 + 0.6 * noise(34 * x + 5 * y, 3 * y),
});
const woven = (surface: Surface, seed: number, strength = 0.13): Material => ({
  surface,
  softness: 0.12,
  folds: clothFolds(strength, seed),
});
const straw: Material = {
  surface: palette.straw,
  pattern: (x, y) => 0.86 + 0.28 * noise(30 * x, 42 * y),
};

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
  bottom: woven(palette.khaki, 4),
  shoes: { surface: palette.brown },
  ...clothes,
});

const woman: Person = {
  tall: 7.3,
  broad: 0.88,
  head: face(
    {
      turn: -0.32,
      tilt: 0.05,
      hairCut: 'bob',
      hat: { kind: 'brim', made: straw, band: palette.red },
      smile: 0.9,
    },
    palette.fair,
    palette.hairBrown,
  ),
  clothes: dressed({
    top: woven(palette.white, 2),
    sleeveTo: 0.36,
    opening: { depth: 0.55, made: palette.fair },
    bottom: woven(palette.rose, 8),
    skirtTo: 5,
  }),
  left: { elbow: [-1.0, 1.75, 0.1], hand: [-0.42, 2.2, 0.62] },
  right: { elbow: [0.96, 1.8, 0.05], hand: [0.4, 2.35, 0.6] },
};

const man: Person = {
  tall: 7.5,
  broad: 1.06,
  head: face(
    {
      turn: -0.55,
      hairCut: 'short',
      hat: { kind: 'peak', made: woven(palette.white, 5, 0.05), band: palette.navy },
      smile: 0.7,
    },
    palette.deep,
    palette.hairBlack,
  ),
  clothes: dressed({
    top: woven(palette.lightBlue, 6),
    sleeveTo: 0.4,
    opening: { depth: 0.4, made: palette.deep },
    bottom: woven(palette.navy, 3),
  }),
  left: { elbow: [-1.12, 1.7, 0.2], hand: [-1.28, 0.35, 0.75] },
  right: { elbow: [1.2, 1.75, -0.05], hand: [0.7, 2.5, 0.3] },
};

const child: Person = {
  tall: 5.7,
  broad: 0.92,
  head: face({ turn: 0.12, tilt: -0.08, hairCut: 'short', smile: 1.2 }, palette.tanned, palette.hairBrown),
  clothes: dressed({
    top: woven(palette.white, 12),
    sleeveTo: 0.4,
    stripes: { made: palette.navy, width: 0.2 },
    vest: woven(palette.yellow, 7, 0.05),
    bottom: woven(palette.denim, 3),
  }),
  left: hanging(-1),
  right: { elbow: [1.05, 1.6, 0.1], hand: [1.2, 0.4, 0.4] },
};

const sailor: Person = {
  tall: 7.4,
  broad: 1,
  head: face(
    {
      turn: 1.0,
      beard: hairOf(palette.hairGrey),
      hat: { kind: 'knitted', made: woven(palette.navy, 3, 0.03), band: palette.navy },
    },
    palette.fair,
    palette.hairGrey,
  ),
  clothes: dressed({ top: woven(palette.mustard, 4), bottom: woven(palette.navy, 9) }),
  left: { elbow: [-1.05, 1.8, 0], hand: [-0.7, 2.6, 0.3] },
  right: hanging(1),
};

const passer: Person = {
  ...woman,
  head: face({ turn: 0.8, hairCut: 'long', sunglasses: true }, palette.brown, palette.hairBlack),
  clothes: dressed({
    top: woven(palette.red, 2),
    sleeveTo: 0.1,
    bottom: woven(palette.red, 8),
    skirtTo: 4.6,
  }),
  left: hanging(-1),
  right: { elbow: [1.0, 1.75, 0.1], hand: [0.8, 0.9, 0.5] },
};

/** Someone in the shade of the awning. */
const sitter: Person = {
  ...man,
  head: face({ turn: 0.5 }, palette.tanned, palette.hairBlack),
  clothes: dressed({ top: woven(palette.white, 2), sleeveTo: 0.4, bottom: woven(palette.khaki, 2) }),
  left: hanging(-1),
  right: hanging(1),
};

function stand(layer: Layer, person: Person, X: number, Z: number, sunShare = 1, skyShare = 1): void {
  const [x, y] = project(view, X, 0, Z);
  const part = drawPerson(layer, { x, y, size: (head * view.focal) / Z }, person, {
    ...daylight,
    sun: daylight.sun * sunShare,
    sky: daylight.sky * skyShare,
    bounce: daylight.bounce * (0.3 + 0.7 * skyShare),
  });
  if (!part) return;
  if (sunShare > 0) throwShadow(layer, part, view, daylight.toSun, X, Z, [0.24, 0.27, 0.33]);
  lay(layer, part);
}

export function drawInShade(layer: Layer): void {
  stand(layer, sitter, -4.35, 11, 0, 0.25);
}

export function drawOnQuay(layer: Layer): void {
  stand(layer, sailor, -2.35, 9.4);
  stand(layer, passer, -2.2, 7.3);
}

export function drawNear(layer: Layer): void {
  stand(layer, man, 1.0, 2.55);
  stand(layer, woman, 0.6, 2.4);
  stand(layer, child, 0.22, 2.3);
}
