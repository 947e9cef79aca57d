import type { Spectrum } from '../spectrum.js';

/** A standard light. */
export interface Illuminant {
  readonly title: string;
  readonly source: string;
  /** Relative spectral power, 100 at 560 nm. */
  readonly spectrum: Spectrum;
}
