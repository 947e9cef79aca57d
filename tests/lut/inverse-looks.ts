import { compileLook } from '../../src/look/compile-look.js';
import { lookSchema } from '../../src/look/look-schema.js';
import type { Run, Triple } from '../../src/maths/matrix3.js';

/** A look from a function on one colour. */
export const lookOf =
  (of: (r: number, g: number, b: number) => Triple): Run =>
  (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      const [r, g, b] = of(values[i], values[i + 1], values[i + 2]);
      [values[i], values[i + 1], values[i + 2]] = [r, g, b];
    }
  };

function saturated(r: number, g: number, b: number, saturation: number): Triple {
  const luma = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return [luma + saturation * (r - luma), luma + saturation * (g - luma), luma + saturation * (b - luma)];
}

const curve = (x: number) => 1 / (1 + Math.exp(-4 * (x - 0.5)));
const contrast = (x: number) => (curve(x) - curve(0)) / (curve(1) - curve(0));
const shoulder = (x: number) => (x < 0.7 ? x : 0.7 + 0.225 * (1 - Math.exp((0.7 - x) / 0.225)));

const projected = lookSchema.parse({
  name: 'projected warm',
  projector: { lamp: { kelvin: 3200 }, flare: 0.004 },
  room: { surround: 'dark', adaptation: 0.8, displaySurround: 'dim' },
  rolloff: { shoulderSoftness: 0.5 },
});

/** Smooth looks that neither clip nor fold: made so, from a slight warmth to a whole projection. */
export const losslessLooks: Record<string, Run> = {
  warm: lookOf((r, g, b) => {
    const [x, y, z] = saturated(r ** 0.9, g, b ** 1.15, 0.85);
    return [0.01 + 0.97 * x, 0.01 + 0.94 * y, 0.01 + 0.85 * z];
  }),
  soft: lookOf((r, g, b) => [0.03 + 0.92 * r ** 0.83, 0.03 + 0.9 * g ** 0.83, 0.03 + 0.82 * b ** 0.87]),
  contrast: lookOf((r, g, b) => [contrast(r), contrast(g), contrast(b)]),
  'half the saturation': lookOf((r, g, b) => saturated(r, g, b, 0.5)),
  shoulder: lookOf((r, g, b) => saturated(r, g, b, 0.8).map(shoulder) as unknown as Triple),
  'projected warm': compileLook(projected),
};
