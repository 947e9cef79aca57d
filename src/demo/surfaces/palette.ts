import { building } from '../../../shared/demo/reflectances/building.js';
import { cloth } from '../../../shared/demo/reflectances/cloth.js';
import type { ReflectanceCurve } from '../../../shared/demo/reflectances/curve.js';
import { nature } from '../../../shared/demo/reflectances/nature.js';
import { skin } from '../../../shared/demo/reflectances/skin.js';
import type { SceneLight } from './light.js';
import { reflectance, type Surface, surfaceUnder } from './surface.js';

/** Every surface that the scenes are made of. */
export const reflectances = { ...skin, ...cloth, ...building, ...nature } satisfies Record<
  string,
  ReflectanceCurve
>;

export type SurfaceName = keyof typeof reflectances;
export type Palette = Readonly<Record<SurfaceName, Surface>>;

/** All surfaces under the lights of a scene: spectra are integrated here and nowhere later. */
export function paletteUnder(light: SceneLight): Palette {
  const entries = Object.entries(reflectances).map(([name, curve]) => [
    name,
    surfaceUnder(light, reflectance(curve)),
  ]);
  return Object.fromEntries(entries) as Palette;
}
