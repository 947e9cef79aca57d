import { fromFunction, type Spectrum } from '../colour/spectrum.js';

/** Density that age has added to the clear base, as seen in red, green and blue. */
export interface Stain {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** Share of a neighbouring band, 0..1, rising smoothly over some 30 nm around the border. */
const rise = (nm: number, borderNm: number) => 1 / (1 + Math.exp((borderNm - nm) / 8));

/** Stain on every wavelength: three broad bands that meet at 495 and 585 nm and add up to one. */
export function stainSpectrum({ red, green, blue }: Stain): Spectrum {
  return fromFunction((nm) => {
    const aboveBlue = rise(nm, 495);
    const aboveGreen = rise(nm, 585);
    return (
      blue * (1 - aboveBlue) + green * (aboveBlue - aboveGreen * aboveBlue) + red * aboveGreen * aboveBlue
    );
  });
}
