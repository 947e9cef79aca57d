import type { Spectrum } from '../../colour/spectrum.js';

/** The three image dyes of a stock and its clear base. */
export interface DyeSet {
  readonly title: string;
  /** Where the curves come from and what they stand for. */
  readonly source: string;
  /** Spectral density of each dye on the wavelength grid, peak 1, unwanted absorptions included. */
  readonly cyan: Spectrum;
  readonly magenta: Spectrum;
  readonly yellow: Spectrum;
  /** Spectral density of clear, unstained film. */
  readonly base: Spectrum;
}
