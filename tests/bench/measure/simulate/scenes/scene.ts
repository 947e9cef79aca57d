import type { Material } from '../materials.js';

/** Where a part of the scene lies, in shares of the frame's width and height from the top left. */
export type Region =
  | { kind: 'all' }
  | { kind: 'below'; y: number; rough?: number }
  | { kind: 'above'; y: number; rough?: number }
  | { kind: 'box'; x: number; y: number; w: number; h: number }
  | { kind: 'blob'; x: number; y: number; rx: number; ry: number; rough?: number }
  | { kind: 'patches'; share: number; scale: number };

export interface Part {
  readonly where: Region;
  /** One material, or two mixed by a fractal. `sky` shines by itself. */
  readonly of: Material | 'sky' | readonly [Material, Material];
  /** Deviation of the logarithm (base 10) of the shading. */
  readonly texture?: number;
  /** Direct light that reaches it, 1 = full, 0 = open shade. */
  readonly lit?: number;
  /** Level, times everything (1 unless given). */
  readonly level?: number;
}

export interface Scene {
  /** Colour temperature of the direct light, and light of the surroundings. */
  readonly directKelvin: number;
  readonly ambient: 'sky' | 'haze' | number;
  /** Light of the surroundings as a share of the direct. */
  readonly ambientShare: number;
  readonly parts: readonly Part[];
  /** Exposure against the usual, in stops. */
  readonly stops?: number;
}

export const sun = { directKelvin: 5400, ambient: 'sky', ambientShare: 0.16 } as const;
export const cloud = { directKelvin: 6200, ambient: 'haze', ambientShare: 0.6 } as const;
export const lamp = { directKelvin: 2900, ambient: 2700, ambientShare: 0.25 } as const;
