// Projector and room. Knows lamps, light paths and the eye; knows nothing of dyes, looks or files.
import type { Spectrum } from '../../colour/spectrum.js';

/** A light source behind the film. */
export interface Lamp {
  readonly title: string;
  /** Where the figure comes from. */
  readonly source: string;
  /** Colour temperature it is known by, kelvin. */
  readonly kelvin: number;
  /** Relative spectral power on the wavelength grid. */
  readonly spectrum: Spectrum;
}
