/** CIE 1931 x y. */
export type Chromaticity = readonly [number, number];

/** The three lights an RGB signal mixes, and the white of equal parts. */
export interface Primaries {
  readonly title: string;
  readonly source: string;
  readonly red: Chromaticity;
  readonly green: Chromaticity;
  readonly blue: Chromaticity;
  readonly white: Chromaticity;
}
