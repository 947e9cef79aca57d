import type { Run, Triple } from '../maths/matrix3.js';

/** One printer point: 0.025 of log10 exposure (common practice, no source). */
export const printerPoint = 0.025;

/** The density about which contrast turns: a grey card of 18 % reflectance, -log10 0.18. */
export const midGreyDensity = -Math.log10(0.18);

/** What a lab's grader would do. */
export interface Printing {
  /** Stops, positive = lighter. */
  readonly exposureStops: number;
  /** Points of red, green, blue light, positive = lighter in that colour. */
  readonly printerPoints: { readonly red: number; readonly green: number; readonly blue: number };
  /** Slope of density about mid-grey, 1 = as it is. */
  readonly contrast: number;
  /** Distance of each density from their mean, 1 = as it is, 0 = grey. */
  readonly saturation: number;
}

/**
 * Prints a run: linear light relative to the open gate, in place. In densities: exposure and points shift, contrast
 * turns about mid-grey, saturation spreads about the mean. Worked on the light itself, so that no light stays none.
 */
export function printRun({ exposureStops, printerPoints, contrast, saturation }: Printing): Run {
  const points: Triple = [printerPoints.red, printerPoints.green, printerPoints.blue];
  const gains = points.map((n) => 2 ** exposureStops * 10 ** (n * printerPoint));
  const grey = 0.18;
  const tiny = 1e-9;
  return (values, count) => {
    for (let i = 0; i < 3 * count; i += 3) {
      for (let k = 0; k < 3; k++) {
        const x = gains[k] * values[i + k];
        values[i + k] = contrast === 1 ? x : Math.sign(x) * grey * Math.pow(Math.abs(x) / grey, contrast);
      }
      if (saturation === 1) continue;
      const r = Math.max(values[i], tiny);
      const g = Math.max(values[i + 1], tiny);
      const b = Math.max(values[i + 2], tiny);
      const mean = Math.cbrt(r * g * b);
      values[i] = mean * Math.pow(r / mean, saturation);
      values[i + 1] = mean * Math.pow(g / mean, saturation);
      values[i + 2] = mean * Math.pow(b / mean, saturation);
    }
  };
}
