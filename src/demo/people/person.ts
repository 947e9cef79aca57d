import type { Material } from '../drawing/relief.js';
import type { Surface } from '../surfaces/surface.js';

/** Hands and elbows: x from the body's middle, n heads below the pit of the neck, z before the body. */
export interface Arm {
  readonly elbow: readonly [x: number, n: number, z: number];
  readonly hand: readonly [x: number, n: number, z: number];
}

export interface HeadLook {
  /** Turn of the head, radians: 0 to the viewer, above 0 to the viewer's right. */
  readonly turn: number;
  /** Tilt in the picture plane, radians. */
  readonly tilt?: number;
  readonly skin: Material;
  readonly lips: Surface;
  readonly hair: Material;
  readonly hairCut: 'short' | 'bob' | 'long' | 'none';
  readonly beard?: Material;
  /** A broad-brimmed hat, a cap with a peak, a knitted hat, or none. */
  readonly hat?: {
    readonly kind: 'brim' | 'peak' | 'knitted';
    readonly made: Material;
    readonly band: Surface;
  };
  readonly sunglasses?: boolean;
  readonly smile?: number;
  /** White and iris of the eyes, line of the lids. */
  readonly eyeWhite: Surface;
  readonly dark: Surface;
}

export interface Clothes {
  readonly top: Material;
  readonly sleeves?: Material;
  /** Where the sleeves end along the arm: 0 shoulder, 0.5 elbow, 1 wrist. */
  readonly sleeveTo?: number;
  readonly bottom: Material;
  /** Where the top ends, heads below the pit of the neck. */
  readonly topTo?: number;
  /** Length of a skirt or coat, heads below the pit of the neck; none: trousers. */
  readonly skirtTo?: number;
  readonly scarf?: Material;
  readonly vest?: Material;
  readonly gloves?: Material;
  readonly shoes: Material;
  /** Open neck: how far down skin or shirt shows. */
  readonly opening?: { readonly depth: number; readonly made: Surface };
  readonly buttons?: Surface;
  /** Stripes across the top. */
  readonly stripes?: { readonly made: Surface; readonly width: number };
}

/** A figure, measured in head heights. */
export interface Person {
  readonly head: HeadLook;
  readonly clothes: Clothes;
  /** Height in heads: an adult 7.3, a child of six 5.6. */
  readonly tall: number;
  /** Width of shoulders as a factor. */
  readonly broad: number;
  readonly left: Arm;
  readonly right: Arm;
}

export const hanging = (side: -1 | 1): Arm => ({
  elbow: [0.98 * side, 1.85, -0.02],
  hand: [0.96 * side, 2.95, 0.16],
});
