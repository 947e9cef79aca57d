import { grid, type Spectrum } from '../../src/colour/spectrum.js';
import type { SpectralProduct } from '../../shared/check-values/densitometry.js';

/** The value of a spectrum on the grid at a wavelength that is one of the grid's. */
export const at = (spectrum: Spectrum, nm: number): number => spectrum[(nm - grid.startNm) / grid.stepNm];

/**
 * ISO density through a status filter, by its tabulated wavelengths (ISO 5-3): -log10(sum(P T) / sum(P)).
 * @param density spectral density at a wavelength
 */
export function statusDensity(product: SpectralProduct, density: (nm: number) => number): number {
  let through = 0;
  let whole = 0;
  product.log10Plus5.forEach((value, i) => {
    const response = 10 ** (value - 5);
    through += response * 10 ** -density(product.startNm + i * product.stepNm);
    whole += response;
  });
  return -Math.log10(through / whole);
}
