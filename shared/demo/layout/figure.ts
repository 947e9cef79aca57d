import type { SurfaceName } from '../reflectances/index.js';

/** Elbow and hand: x from the body's middle, heads below the pit of the neck, heads before the body. */
export interface ArmPlan {
  readonly elbow: readonly [across: number, below: number, before: number];
  readonly hand: readonly [across: number, below: number, before: number];
}

/** A figure of our own invention: where it stands, how it holds itself, what it wears. Lengths in head heights. */
export interface FigurePlan {
  /** Metres to the right of the middle and away from the lens. */
  readonly across: number;
  readonly away: number;
  /** Height in heads: an adult 7.3, a child 5.7. Width of the shoulders as a factor. */
  readonly tall: number;
  readonly broad: number;
  /** Share of sun and sky that reach it; left out: all. */
  readonly sunShare?: number;
  readonly skyShare?: number;
  readonly left: ArmPlan;
  readonly right: ArmPlan;

  /** Turn of the head, radians: 0 to the viewer, above 0 to the viewer's right. Tilt in the picture plane. */
  readonly turn: number;
  readonly tilt?: number;
  /** 0 grave, 1 smiling. */
  readonly smile?: number;
  readonly skin: 'fair' | 'tanned' | 'brown' | 'deep';
  readonly hair: SurfaceName;
  readonly hairCut: 'short' | 'bob' | 'long' | 'none';
  readonly beard?: SurfaceName;
  readonly hat?: {
    readonly kind: 'brim' | 'peak' | 'knitted';
    readonly made: SurfaceName;
    readonly band: SurfaceName;
  };
  readonly sunglasses?: boolean;

  /** Cotton creases; wool is thick and hangs. */
  readonly stuff: 'cotton' | 'wool';
  readonly top: SurfaceName;
  /** Where the top ends, heads below the pit of the neck. */
  readonly topTo?: number;
  /** Where the sleeves end: 0 shoulder, 0.5 elbow, 1 wrist. */
  readonly sleeveTo?: number;
  readonly bottom: SurfaceName;
  /** Hem of a skirt or coat, heads below the pit of the neck; left out: trousers. */
  readonly skirtTo?: number;
  readonly scarf?: SurfaceName;
  readonly vest?: SurfaceName;
  readonly gloves?: SurfaceName;
  readonly shoes?: SurfaceName;
  /** Depth of the open neck. */
  readonly openTo?: number;
  readonly buttons?: SurfaceName;
  readonly stripes?: { readonly made: SurfaceName; readonly width: number };
}

/** An arm that hangs at the side. */
export const hanging = (side: -1 | 1): ArmPlan => ({
  elbow: [0.98 * side, 1.85, -0.02],
  hand: [0.96 * side, 2.95, 0.16],
});

/** An arm with the hand before the body. */
export const folded = (side: -1 | 1): ArmPlan => ({
  elbow: [1.04 * side, 1.8, 0.05],
  hand: [0.36 * side, 2.3 + 0.08 * side, 0.62],
});
