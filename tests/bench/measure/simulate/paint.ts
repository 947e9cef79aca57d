import { seededRandom } from '../../../../src/maths/random.js';
import { dot, times, type Curve } from './grid.js';
import { planck, skyLight } from './lights.js';
import { materials, type Material } from './materials.js';
import { fractalNoise } from './noise-field.js';
import type { Part, Region, Scene } from './scenes/scene.js';
import type { Stock } from './stocks.js';

/** Exposures of the three layers, a white in full light = 1 in each if the light is the one the film is balanced for. */
export interface Painting {
  readonly width: number;
  readonly height: number;
  readonly exposures: Float64Array;
}

/** How much of a region covers a point: its own edge made rough by a fractal. */
function covers(where: Region, x: number, y: number, seed: number): boolean {
  const wobble = (rough: number | undefined) =>
    rough === undefined ? 0 : rough * fractalNoise(x, y, 5, seed, 4);
  switch (where.kind) {
    case 'all':
      return true;
    case 'below':
      return y > where.y + wobble(where.rough);
    case 'above':
      return y < where.y + wobble(where.rough);
    case 'box':
      return x >= where.x && x < where.x + where.w && y >= where.y && y < where.y + where.h;
    case 'blob':
      return (
        ((x - where.x) / where.rx) ** 2 + ((y - where.y) / where.ry) ** 2 < (1 + 4 * wobble(where.rough)) ** 2
      );
    case 'patches':
      return fractalNoise(x, y, where.scale, seed, 3) > 1.9 - 3.2 * Math.sqrt(where.share);
  }
}

type Lights = { direct: Curve; ambient: Curve; sky: Curve; balance: readonly number[] };

function lightsOf(scene: Scene, stock: Stock, balanced: boolean): Lights {
  const unit = (light: Curve) => light.map((v) => v / dot(light, stock.layers[1]));
  const direct = unit(planck(scene.directKelvin));
  const { ambient } = scene;
  const around = ambient === 'sky' ? skyLight(0.25) : ambient === 'haze' ? skyLight(0.8) : planck(ambient);
  const film = unit(balanced ? direct : planck(5500));
  return {
    direct,
    ambient: unit(around),
    sky: unit(skyLight(0.45)),
    balance: stock.layers.map((layer) => dot(film, layer)),
  };
}

/** Exposures of one material: in the direct light and in the light of the surroundings, r g b each. */
function answers(material: Material | 'sky', scene: Scene, lights: Lights, stock: Stock): number[] {
  const under = (light: Curve) =>
    stock.layers.map((layer, k) => {
      const seen = material === 'sky' ? lights.sky : times(light, materials[material]);
      return dot(seen, layer) / lights.balance[k];
    });
  if (material === 'sky') return [...under(lights.sky), 0, 0, 0];
  const total = 1 + scene.ambientShare;
  const direct = under(lights.direct).map((v) => v / total);
  return [...direct, ...under(lights.ambient).map((v) => (v * scene.ambientShare) / total)];
}

function paintPart(
  part: Part,
  scene: Scene,
  lights: Lights,
  stock: Stock,
  seed: number,
  out: Painting,
): void {
  const names = typeof part.of === 'string' ? ([part.of, part.of] as const) : part.of;
  const [first, second] = names.map((name) => answers(name, scene, lights, stock));
  const { width, height, exposures } = out;
  const lit = part.of === 'sky' ? 1 : (part.lit ?? 1);
  for (let j = 0, p = 0; j < height; j++)
    for (let i = 0; i < width; i++, p += 3) {
      const [x, y] = [(i + 0.5) / width, (j + 0.5) / height];
      if (!covers(part.where, x, y, seed)) continue;
      const mix = names[0] === names[1] ? 0 : 1 / (1 + Math.exp(-2.5 * fractalNoise(x, y, 4, seed + 7)));
      const shade = (part.level ?? 1) * 10 ** ((part.texture ?? 0) * fractalNoise(x, y, 6, seed + 13));
      for (let k = 0; k < 3; k++) {
        const a = lit * first[k] + first[k + 3];
        const b = lit * second[k] + second[k + 3];
        exposures[p + k] = shade * ((1 - mix) * a + mix * b);
      }
    }
}

/** Veil of the taking lens, fall-off to the corners and the exposure given. */
function throughLens({ width, height, exposures }: Painting, level: number): void {
  const mean = [0, 0, 0];
  exposures.forEach((v, i) => (mean[i % 3] += (3 * v) / exposures.length));
  for (let j = 0, p = 0; j < height; j++)
    for (let i = 0; i < width; i++, p += 3) {
      const r2 = ((i + 0.5) / width - 0.5) ** 2 + ((j + 0.5) / height - 0.5) ** 2;
      for (let k = 0; k < 3; k++)
        exposures[p + k] = level * (exposures[p + k] * (1 - 0.4 * r2) + 0.006 * mean[k]);
    }
}

/** @param balanced the film (or its filter) is balanced for this scene's light @param stops exposure beside the scene's own */
export function paint(
  scene: Scene,
  stock: Stock,
  size: { width: number; height: number },
  options: { seed: number; balanced: boolean; stops: number },
): Painting {
  const random = seededRandom(options.seed);
  const out = { ...size, exposures: new Float64Array(3 * size.width * size.height) };
  const lights = lightsOf(scene, stock, options.balanced);
  for (const part of scene.parts) paintPart(part, scene, lights, stock, Math.floor(random() * 1e6), out);
  throughLens(out, 2 ** ((scene.stops ?? 0) + options.stops));
  return out;
}
