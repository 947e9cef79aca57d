import { reflectances, type SurfaceName } from '../../../shared/demo/reflectances/index.js';
import type { SceneLight } from './light.js';
import { reflectance, type Surface, surfaceUnder } from './surface.js';

/** Every surface of the scenes under the lights of one of them. */
export type Palette = Readonly<Record<SurfaceName, Surface>>;

/** Integrates the spectra of all surfaces under the lights of a scene: here and nowhere later. */
export function paletteUnder(light: SceneLight): Palette {
  const entries = Object.entries(reflectances).map(([name, curve]) => [
    name,
    surfaceUnder(light, reflectance(curve)),
  ]);
  return Object.fromEntries(entries) as Palette;
}
