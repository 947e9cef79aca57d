import { illuminants } from '../../colour/illuminants/index.js';
import type { Lamp } from './lamp.js';

const standard = ({ title, source, spectrum }: (typeof illuminants)['a'], kelvin: number): Lamp => ({
  title,
  source,
  kelvin,
  spectrum,
});

export const illuminantA = standard(illuminants.a, 2856);
export const d65 = standard(illuminants.d65, 6504);
