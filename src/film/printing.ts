import { primaries } from '../colour/primaries/index.js';
import { rgbToXyz } from '../colour/primaries/rgb-matrix.js';
import type { Run, Triple } from '../maths/matrix3.js';

/** One printer point: 0.025 of log10 exposure (common practice, no source). */
export const printerPoint = 0.025;

/** The light about which contrast turns: a grey card of 18 % reflectance, density 0.745 (common practice, no source). */
export const midGrey = 0.18;

/** What a lab's grader would do. */
export interface Printing {
  /** Stops, positive = lighter. */
  readonly exposureStops: number;
  /** Points of red, green, blue light, positive = lighter in that colour. */
  readonly printerPoints: { readonly red: number; readonly green: number; readonly blue: number };
  /** Slope of density about mid-grey, 1 = as it is. */
  readonly contrast: number;
  /** Distance of a colour from the grey of its luminance, 1 = as it is, 0 = grey. */
  readonly saturation: number;
}

/**
 * Prints a run: linear BT.2020 relative to the open gate, in place. In densities exposure and points shift and contrast
 * turns about mid-grey; it is worked on the light itself, so that no light stays none. Saturation moves a colour along
 * the straight line to its grey: as a spread of densities it tore colours apart where a channel has next to no light.
 */
export function printRun({ exposureStops, printerPoints, contrast, saturation }: Printing): Run {
  const points: Triple = [printerPoints.red, printerPoints.green, printerPoints.blue];
  const gains = points.map((n) => 2 ** exposureStops * 10 ** (n * printerPoint));
  const [, , , red, green, blue] = rgbToXyz(primaries.bt2020);
  return (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      for (let k = 0; k < 3; k++) {
        const x = gains[k] * values[i + k];
        values[i + k] =
          contrast === 1 ? x : Math.sign(x) * midGrey * Math.pow(Math.abs(x) / midGrey, contrast);
      }
      if (saturation === 1) continue;
      const grey = red * values[i] + green * values[i + 1] + blue * values[i + 2];
      for (let k = 0; k < 3; k++) values[i + k] = grey + saturation * (values[i + k] - grey);
    }
  };
}
