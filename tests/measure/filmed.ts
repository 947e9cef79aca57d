import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToRgb } from '../../src/colour/primaries/rgb-matrix.js';
import { srgb } from '../../src/colour/transfer-functions/srgb.js';
import { densityLight } from '../../src/film/density-light.js';
import { densityOf } from '../../src/film/density.js';
import { dyeModel } from '../../src/film/dye-model.js';
import { type DyeSetName, dyeSets } from '../../src/film/dye-sets/index.js';
import { ageStock, gateLight } from '../../src/film/stock.js';
import { transformRun3, type Triple } from '../../src/maths/matrix3.js';
import { normalRandom, seededRandom } from '../../src/maths/random.js';
import { dyeSpace } from '../../src/measure/dye-space.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';

/** Equivalent amounts 1 1 1 of a dye set in its own amounts: what looks neutral at density 1. */
function unitOf(dyes: DyeSetName): Triple {
  const space = dyeSpace(dyeSets[dyes]);
  // amounts are linear in equivalent amounts: the unit is what turns plain amounts of 1 into the equivalent ones
  const light = new Float64Array(3);
  const model = dyeModel(dyeSets[dyes], dyeSets[dyes].base, gateLight);
  model.light(1, 1, 1, light);
  const run = densitiesFromBt2020(light);
  space.toAmounts(run);
  return [1 / run[0], 1 / run[1], 1 / run[2]];
}

/** Densities, in the primaries of densities, of linear BT.2020 relative to the open gate. */
export function densitiesFromBt2020(light: Float64Array): Float64Array {
  const out = light.slice();
  transformRun3(densityLight(gateLight).fromBt2020, out, out.length / 3);
  return out.map(densityOf);
}

export interface Ageing {
  readonly dyes: DyeSetName;
  readonly loss: Triple;
  readonly stain?: Triple;
  readonly openGate?: number;
}

/** Linear BT.709 on the camera's scale of film with these equivalent amounts (cyan magenta yellow ...), aged. */
export function filmLightOf(
  amounts: readonly number[],
  { dyes, loss, stain = [0, 0, 0], openGate = 0.9 }: Ageing,
): Float64Array {
  const unit = unitOf(dyes);
  const model = dyeModel(dyeSets[dyes], dyeSets[dyes].base, gateLight);
  const run = new Float64Array(amounts.length);
  const light = new Float64Array(3);
  for (let i = 0; i < amounts.length; i += 3) {
    model.light(amounts[i] * unit[0], amounts[i + 1] * unit[1], amounts[i + 2] * unit[2], light);
    run.set(light, i);
  }
  const [cyan, magenta, yellow] = loss;
  const [red, green, blue] = stain;
  ageStock({ dyes: dyeSets[dyes], loss: { cyan, magenta, yellow }, stain: { red, green, blue } })(
    run,
    run.length / 3,
  );
  transformRun3(rgbToRgb(primaries.bt2020, primaries.bt709), run, run.length / 3);
  return run.map((v) => openGate * v);
}

/** A 16-bit sRGB picture of linear BT.709 light. */
export function written(light: Float64Array, width: number): Picture {
  const data = Uint16Array.from(light, (v) => Math.round(65535 * srgb.encode(Math.min(1, Math.max(0, v)))));
  return makePicture(width, light.length / 3 / width, { channels: 3, bits: 16 }, data);
}

/** Equivalent amounts of a scene: every tone from clear to black, near-neutral mostly, odd colours half-way. */
export function sceneAmounts(seed: number, count: number, cast: Triple = [0, 0, 0]): number[] {
  const random = seededRandom(seed);
  const out: number[] = [];
  for (let i = 0; i < count; i++) {
    const tone = 0.1 + 2.45 * random();
    const middle = 4 * (tone / 2.6) * (1 - tone / 2.6);
    for (let k = 0; k < 3; k++) out.push(tone + 0.25 * middle * normalRandom(random) + middle * cast[k]);
  }
  return out;
}

const [width, height] = [96, 64];
/** Where `frame` has known parts: rectangles as marks want them. */
export const known = {
  black: { still: 1, x: 0, y: 0, width: 16, height: 16 },
  clear: { still: 1, x: 32, y: 0, width: 16, height: 16 },
  neutral: { still: 1, x: 64, y: 0, width: 16, height: 16 },
} as const;

/** A still of an aged scene with unexposed film, bare light and a mid-grey in its corners (see `known`). */
export function frame(
  seed: number,
  ageing: Ageing,
  { marked = false, cast = [0, 0, 0] as Triple } = {},
): Picture {
  const amounts = sceneAmounts(seed, width * height, cast);
  const within = (r: { x: number; y: number; width: number; height: number }, i: number) =>
    i % width >= r.x && i % width < r.x + r.width && Math.floor(i / width) < r.y + r.height;
  for (let i = 0; marked && i < width * height; i++) {
    if (within(known.black, i)) amounts.fill(2.65, 3 * i, 3 * i + 3);
    if (within(known.neutral, i)) amounts.fill(1, 3 * i, 3 * i + 3);
  }
  const light = filmLightOf(amounts, ageing);
  for (let i = 0; marked && i < width * height; i++)
    if (within(known.clear, i)) light.fill(ageing.openGate ?? 0.9, 3 * i, 3 * i + 3);
  return written(light, width);
}
