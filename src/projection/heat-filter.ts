import { fromFunction, type Spectrum } from '../colour/spectrum.js';

/**
 * A heat-absorbing glass: clear in the blue and green, falling through the red to a third at the edge of sight.
 * Representative, from memory: such a filter raises a lamp's colour temperature by 50 to 200 K.
 */
export const heatFilter: Spectrum = fromFunction((nm) => 0.9 - 0.6 / (1 + Math.exp((690 - nm) / 25)));

/** Light behind the heat filter. */
export function behindHeatFilter(power: Spectrum): Spectrum {
  return power.map((value, i) => value * heatFilter[i]);
}
