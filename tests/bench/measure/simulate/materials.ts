import { curve, onGrid, sigmoid, type Curve } from './grid.js';
import { testColourSamples } from './reflectances.js';

const flat = (level: number): Curve => curve(() => level);
/** A reflectance that rises from one level to another about a wavelength, as earths and pigments do. */
const rise = (low: number, high: number, nm: number, width: number): Curve =>
  curve((w) => low + (high - low) * sigmoid((w - nm) / width));

const published = Object.fromEntries(
  Object.entries(testColourSamples).map(([name, values]) => [name, onGrid(values)]),
) as Record<keyof typeof testColourSamples, Curve>;

/** Reflectances: the published samples, and smooth ones of our own making for what they lack. */
export const materials = {
  ...published,
  white: curve((w) => 0.86 * sigmoid((w - 385) / 12)),
  snow: curve((w) => 0.93 - 0.0002 * (w - 450)),
  paper: rise(0.68, 0.82, 450, 25),
  grey: flat(0.3),
  darkGrey: flat(0.1),
  black: flat(0.025),
  road: rise(0.1, 0.15, 520, 90),
  concrete: rise(0.26, 0.37, 500, 70),
  brick: rise(0.07, 0.34, 592, 18),
  sand: rise(0.17, 0.47, 530, 55),
  soil: rise(0.05, 0.17, 580, 60),
  wood: rise(0.08, 0.36, 570, 45),
  darkWood: rise(0.03, 0.12, 590, 45),
  water: curve((w) => 0.03 + 0.07 * Math.exp(-(((w - 490) / 70) ** 2))),
  denim: curve((w) => 0.05 + 0.12 * Math.exp(-(((w - 455) / 55) ** 2)) + 0.06 * sigmoid((w - 690) / 12)),
  darkSkin: rise(0.05, 0.24, 590, 50),
  hair: rise(0.02, 0.09, 610, 60),
  dryGrass: rise(0.1, 0.42, 550, 40),
  autumnLeaf: rise(0.04, 0.45, 585, 16),
  tile: curve((w) => 0.1 + 0.5 * Math.exp(-(((w - 495) / 45) ** 2))),
  orangeCloth: rise(0.05, 0.62, 572, 12),
  rust: rise(0.05, 0.24, 605, 24),
} satisfies Record<string, Curve>;

export type Material = keyof typeof materials;
