import type { Triple } from '../../maths/matrix3.js';
import type { Surface } from '../surfaces/surface.js';
import type { Layer } from './layer.js';
import { clamp01 } from './noise.js';
import { type BodyLight, type Illumination, illuminate } from './relief-light.js';
import { finer, type Material, pointsIn, type Relief } from './relief.js';
import type { Bounds } from './shapes.js';

/** What has been drawn on a body: a surface with soft edges, such as lips or a stripe. */
export interface Stroke {
  readonly surface: Surface;
  /** The material it is drawn on; what lies over that hides it. */
  readonly on: Material;
  /** Body units: left, bottom, right, top. */
  readonly bounds: Bounds;
  /** Cover 0..1 at a body place. */
  readonly cover: (x: number, y: number) => number;
}

/** Light just past the edge of the sun is red in skin, which light enters; a share of the sun's. */
const edgeGlow: Triple = [0.4, 0.08, 0.024];
/** Softness from which a material is taken to let light in. */
const lightEnters = 0.2;

function colour(relief: Relief, light: Illumination): Float32Array {
  const { width, height, material, materials, step, x0, y0 } = relief;
  const colours = new Float32Array(3 * relief.z.length);
  for (let row = 0, at = 0; row < height; row++)
    for (let column = 0; column < width; column++, at++) {
      if (material[at] < 0) continue;
      const { surface, pattern, softness = 0 } = materials[material[at]];
      const factor = pattern ? pattern(x0 + column * step, y0 - row * step) : 1;
      const sun = light.sun[at];
      const glow = softness > lightEnters ? sun * (1 - sun) : 0;
      for (let k = 0; k < 3; k++)
        colours[3 * at + k] =
          factor *
            ((sun + glow * edgeGlow[k]) * surface.sun[k] +
              light.sky[at] * surface.sky[k] +
              light.bounce[at] * surface.bounce[k]) +
          light.gloss[at];
    }
  return colours;
}

function draw(
  relief: Relief,
  light: Illumination,
  colours: Float32Array,
  { surface, on, bounds, cover }: Stroke,
): void {
  const { width, material, materials, step, x0, y0 } = relief;
  const under = materials.indexOf(on);
  const { firstColumn, lastColumn, firstRow, lastRow } = pointsIn(relief, bounds);
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = firstColumn; column <= lastColumn; column++) {
      const at = row * width + column;
      if (under < 0 || material[at] !== under) continue;
      const share = clamp01(cover(x0 + column * step, y0 - row * step));
      if (share === 0) continue;
      for (let k = 0; k < 3; k++) {
        const drawn =
          light.sun[at] * surface.sun[k] +
          light.sky[at] * surface.sky[k] +
          light.bounce[at] * surface.bounce[k];
        colours[3 * at + k] += share * (drawn - colours[3 * at + k]);
      }
    }
}

/** Lights a relief: its part of the frame, made coarser to the picture's pixels, ready to be laid. */
export function lightRelief(relief: Relief, body: BodyLight, strokes: readonly Stroke[] = []): Layer {
  const light = illuminate(relief, body);
  const colours = colour(relief, light);
  for (const stroke of strokes) draw(relief, light, colours, stroke);
  const { part, width } = relief;
  const share = 1 / (finer * finer);
  for (let row = 0, to = 0; row < part.height; row++)
    for (let column = 0; column < part.width; column++, to++)
      for (let i = 0; i < finer * finer; i++) {
        const at = (finer * row + (i >> 1)) * width + finer * column + (i & 1);
        if (relief.material[at] < 0) continue;
        part.cover[to] += share;
        for (let k = 0; k < 3; k++) part.light[3 * to + k] += share * colours[3 * at + k];
      }
  return part;
}
