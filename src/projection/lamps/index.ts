import type { Lamp } from './lamp.js';
import { halogen, halogenLow, incandescent, incandescentDim, incandescentHighWattage } from './radiators.js';
import { d65, illuminantA } from './standard.js';
import { xenon } from './xenon.js';

export type { Lamp } from './lamp.js';

/** The lamps that a look can name. */
export const lamps = {
  incandescent,
  'incandescent-high-wattage': incandescentHighWattage,
  'incandescent-dim': incandescentDim,
  'tungsten-halogen': halogen,
  'tungsten-halogen-low': halogenLow,
  xenon,
  'illuminant-a': illuminantA,
  d65,
} as const satisfies Record<string, Lamp>;
