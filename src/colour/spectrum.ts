/** The wavelengths every spectrum is given at: 380 to 780 nm in steps of 5 nm (CIE 15:2004, section 7.2). */
export const grid = { startNm: 380, stepNm: 5, count: 81 } as const;

/** One value for each wavelength of the grid; what it measures is said where it is made. */
export type Spectrum = Float64Array;

/** The wavelength of a place on the grid, in nm. */
export const wavelengthNm = (index: number): number => grid.startNm + grid.stepNm * index;

/** @param f the value at a wavelength in nm */
export function fromFunction(f: (nm: number) => number): Spectrum {
  return Float64Array.from({ length: grid.count }, (_, index) => f(wavelengthNm(index)));
}

/** A table of even steps put on the grid: linear between its values, held beyond its ends. */
export function resampleToGrid(startNm: number, stepNm: number, values: ArrayLike<number>): Spectrum {
  return resamplePairsToGrid(
    Array.from(values, (value, index) => [startNm + stepNm * index, value] as const),
  );
}

/**
 * A table of pairs [nm, value] put on the grid: linear between its values, held beyond its ends.
 * @param pairs in rising order of wavelength
 * @throws RangeError without pairs, or when the wavelengths do not rise
 */
export function resamplePairsToGrid(pairs: readonly (readonly [number, number])[]): Spectrum {
  if (pairs.length === 0) throw new RangeError('a spectrum needs at least one value');
  if (pairs.some(([nm], index) => index > 0 && !(nm > pairs[index - 1][0])))
    throw new RangeError('the wavelengths of a spectrum must rise');
  return fromFunction((nm) => {
    const above = pairs.findIndex(([pairNm]) => pairNm >= nm);
    if (above < 0) return pairs[pairs.length - 1][1];
    if (above === 0) return pairs[0][1];
    const [lowNm, low] = pairs[above - 1];
    const [highNm, high] = pairs[above];
    return low + ((nm - lowNm) / (highNm - lowNm)) * (high - low);
  });
}
