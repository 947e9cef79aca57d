import { planck } from '../../colour/illuminants/planck.js';
import type { Lamp } from './lamp.js';

const radiator = (title: string, kelvin: number): Lamp => ({
  title,
  source: 'colour temperature: common practice, no source; spectrum: Planck radiator of that temperature',
  kelvin,
  spectrum: planck(kelvin),
});

export const incandescent = radiator('incandescent projection lamp', 2950);
export const incandescentHighWattage = radiator(
  'incandescent projection lamp of high wattage and short life',
  3200,
);
export const incandescentDim = radiator('old incandescent lamp run well below its voltage', 2400);
export const halogen = radiator('tungsten-halogen lamp', 3300);
export const halogenLow = radiator('tungsten-halogen lamp switched to low light', 3100);
