import type { Layer } from '../drawing/layer.js';
import { fractalNoise, smoothStep } from '../drawing/noise.js';
import {
  addEllipsoid,
  addLimb,
  makeRelief,
  type Material,
  type Relief,
  type Stand,
} from '../drawing/relief.js';
import { type BodyLight, lightRelief, type Stroke } from '../drawing/relief-light.js';
import { addHead } from './head.js';
import type { Arm, Clothes, Person } from './person.js';
import { length2 } from '../drawing/length.js';

/** Cloth that hangs: folds running down, finer towards the waist. */
export const clothFolds =
  (strength: number, seed: number) =>
  (x: number, y: number): number =>
    strength *
    (fractalNoise(1.9 * x + seed, 0.75 * y + 0.4 * x, 3) + 0.35 * fractalNoise(5 * x, 2.2 * y + seed, 2));

/** Where a height below the pit of the neck lies, body units. */
type Level = (n: number) => number;

function addTorso(relief: Relief, { clothes, broad }: Person, level: Level, b: number): void {
  const { top, bottom, skirtTo, topTo = 2.55 } = clothes;
  const w = broad * b;
  const melt = 0.14;
  const shoulder = level(0.36);
  addLimb(relief, bottom, {
    from: [0, level(2.1), -0.02],
    to: [0, level(2.7), -0.02],
    radii: [0.54 * w, 0.6 * w],
    flat: 0.62,
    melt: 0.08,
    hem: level(3),
  });
  if (skirtTo !== undefined)
    addLimb(relief, bottom, {
      from: [0, level(2.2), 0],
      to: [0, level(skirtTo + 0.5), 0],
      radii: [0.58 * w, 0.92 * w],
      flat: 0.6,
      melt: 0.05,
      hem: level(skirtTo),
    });
  for (const s of [-1, 1])
    addLimb(relief, top, {
      from: [0.1 * s * w, level(0.16), -0.08],
      to: [0.62 * s * w, shoulder, -0.05],
      radii: [0.2 * b, 0.22 * b],
      melt,
    });
  addLimb(relief, top, {
    from: [0, level(0.62), 0],
    to: [0, level(1.7), 0],
    radii: [0.68 * w, 0.55 * w],
    flat: 0.62,
    melt,
  });
  addLimb(relief, top, {
    from: [0, level(1.7), 0],
    to: [0, level(2.6), 0],
    radii: [0.55 * w, 0.66 * w],
    flat: 0.66,
    melt,
    hem: level(topTo),
  });
}

function addLegs(relief: Relief, { clothes }: Person, level: Level, b: number): void {
  for (const s of [-1, 1]) {
    const hip = [0.27 * s * b, level(2.65), -0.02] as const;
    const knee = [0.29 * s * b, level(4.45), 0.04] as const;
    const ankle = [0.3 * s * b, level(6.2), -0.03] as const;
    addLimb(relief, clothes.bottom, { from: hip, to: knee, radii: [0.34 * b, 0.24 * b], melt: 0.05 });
    addLimb(relief, clothes.bottom, { from: knee, to: ankle, radii: [0.24 * b, 0.17 * b], melt: 0.05 });
    addEllipsoid(relief, clothes.shoes, {
      centre: [0.34 * s * b, level(6.42), 0.1],
      radii: [0.2 * b, 0.12 * b, 0.3 * b],
    });
  }
}

function addArm(
  relief: Relief,
  { head, clothes, broad }: Person,
  arm: Arm,
  side: -1 | 1,
  level: Level,
  b: number,
): void {
  const place = ([x, n, z]: readonly [number, number, number]) => [x * b, level(n), z * b] as const;
  const shoulder = [0.66 * side * broad * b, level(0.42), -0.04] as const;
  const elbow = place(arm.elbow);
  const hand = place(arm.hand);
  const cloth = clothes.sleeves ?? clothes.top;
  const to = clothes.sleeveTo ?? 1;
  const part = (a: readonly number[], c: readonly number[], t: number) =>
    [a[0] + t * (c[0] - a[0]), a[1] + t * (c[1] - a[1]), a[2] + t * (c[2] - a[2])] as const;
  const thick: Material = cloth;
  addLimb(relief, head.skin, { from: shoulder, to: elbow, radii: [0.19 * b, 0.145 * b] });
  addLimb(relief, head.skin, { from: elbow, to: hand, radii: [0.145 * b, 0.1 * b], melt: 0.04 });
  const upperEnd = part(shoulder, elbow, Math.min(1, 2 * to));
  addLimb(relief, thick, { from: shoulder, to: upperEnd, radii: [0.25 * b, 0.21 * b], melt: 0.05 });
  if (to > 0.5)
    addLimb(relief, thick, {
      from: elbow,
      to: part(elbow, hand, 2 * to - 1),
      radii: [0.21 * b, 0.155 * b],
      melt: 0.05,
    });
  const along = Math.atan2(hand[1] - elbow[1], hand[0] - elbow[0]);
  const reach = [0.12 * b * Math.cos(along), 0.12 * b * Math.sin(along)];
  addEllipsoid(relief, clothes.gloves ?? head.skin, {
    centre: [hand[0] + reach[0], hand[1] + reach[1], hand[2] + 0.02],
    radii: [0.2 * b, 0.115 * b, 0.1 * b],
    turn: along,
    melt: 0.03,
  });
}

/** Opening at the neck, stripes, buttons: drawn on the clothes. */
function clothesStrokes({ top, opening, stripes, buttons }: Clothes, level: Level, b: number): Stroke[] {
  const out: Stroke[] = [];
  if (stripes)
    out.push({
      surface: stripes.made,
      on: top,
      bounds: [-1.2 * b, level(2.5), 1.2 * b, level(0.25)],
      cover: (x, y) => {
        const at = (level(0) - y + 0.05 * x * x) / stripes.width;
        return 0.92 * smoothStep(0.28, 0.22, Math.abs((at % 1) - 0.5));
      },
    });
  if (opening)
    out.push({
      surface: opening.made,
      on: top,
      bounds: [-0.3 * b, level(opening.depth), 0.3 * b, level(-0.02)],
      cover: (x, y) => {
        const down = (level(-0.02) - y) / (level(-0.02) - level(opening.depth));
        return smoothStep(0.02, -0.02, Math.abs(x) - 0.27 * b * (1 - down));
      },
    });
  if (buttons)
    for (const n of [0.75, 1.2, 1.65, 2.1, 2.6])
      out.push({
        surface: buttons,
        on: top,
        bounds: [-0.1, level(n) - 0.1, 0.1, level(n) + 0.1],
        cover: (x, y) => smoothStep(0.055 * b, 0.035 * b, length2(x - 0.03, y - level(n))),
      });
  return out;
}

function addExtras(relief: Relief, { clothes, broad }: Person, level: Level, b: number): void {
  const w = broad * b;
  const { vest, scarf } = clothes;
  if (vest)
    for (const s of [-1, 1])
      addLimb(relief, vest, {
        from: [0.3 * s * w, level(0.3), 0.3 * b],
        to: [0.33 * s * w, level(1.75), 0.28 * b],
        radii: [0.24 * b, 0.3 * b],
        flat: 0.7,
      });
  if (scarf) {
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
    });
  }
}

/** A figure standing with its feet at the stand, lit, ready to be laid on the layer; undefined outside it. */
export function drawPerson(layer: Layer, stand: Stand, person: Person, light: BodyLight): Layer | undefined {
  const { tall } = person;
  const relief = makeRelief(layer, stand, [-1.7, -0.3, 1.7, tall + 0.9]);
  if (!relief) return undefined;
  const middle = tall - 0.5;
  const b = (tall - 1.22) / 6.1;
  const level: Level = (n) => middle - 0.72 - n * b;
  addLegs(relief, person, level, b);
  addTorso(relief, person, level, b);
  addArm(relief, person, person.left, -1, level, b);
  addArm(relief, person, person.right, 1, level, b);
  const onClothes = clothesStrokes(person.clothes, level, b);
  addExtras(relief, person, level, b);
  const onHead = addHead(relief, person.head, 0, middle);
  return lightRelief(relief, light, [...onClothes, ...onHead]);
}
