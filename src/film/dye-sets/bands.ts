import { fromFunction, type Spectrum } from '../../colour/spectrum.js';

/** An absorption band: height, peak (nm) and the widths (standard deviations, nm) of its short and long flank. */
export type Band = readonly [height: number, peakNm: number, shortFlankNm: number, longFlankNm: number];

/** The sum of absorption bands on the wavelength grid. */
export function bands(...list: readonly Band[]): Spectrum {
  return fromFunction((nm) =>
    list.reduce((sum, [height, peak, short, long]) => {
      const u = (nm - peak) / (nm < peak ? short : long);
      return sum + height * Math.exp(-0.5 * u * u);
    }, 0),
  );
}

/** A dye: bands scaled so that the highest value is 1. */
export function dye(...list: readonly Band[]): Spectrum {
  const spectrum = bands(...list);
  const peak = Math.max(...spectrum);
  return spectrum.map((value) => value / peak);
}
