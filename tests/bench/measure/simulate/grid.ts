// The wavelengths of the simulator, 380 to 730 nm in steps of 5 nm. The simulator knows nothing of src/:
// it stands for the world, and the program under test must not share its physics.

export type Curve = Float64Array;

export const wavelengthsNm: readonly number[] = Array.from({ length: 71 }, (_, i) => 380 + 5 * i);

export const curve = (f: (nm: number) => number): Curve => Float64Array.from(wavelengthsNm, f);

/** The part of a table from 380 nm in steps of 5 nm that lies on the grid. */
export const onGrid = (values: readonly number[]): Curve =>
  Float64Array.from(values.slice(0, wavelengthsNm.length));

export function dot(a: Curve, b: Curve): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

export const times = (a: Curve, b: Curve): Curve => a.map((value, i) => value * b[i]);

/** A bell with its own width on either side. */
export const skewBell = (nm: number, peak: number, left: number, right: number): number =>
  Math.exp(-0.5 * ((nm - peak) / (nm < peak ? left : right)) ** 2);

export const sigmoid = (x: number): number => 1 / (1 + Math.exp(-x));

/** Uniform between two bounds. */
export type Between = (low: number, high: number) => number;
export const betweenOf =
  (random: () => number): Between =>
  (low, high) =>
    low + (high - low) * random();
