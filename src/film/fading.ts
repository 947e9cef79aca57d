/** Share of each dye that time has taken, 0..0.9. */
export interface DyeLoss {
  readonly cyan: number;
  readonly magenta: number;
  readonly yellow: number;
}

/** Below zero (lighter than clear film: noise, perforation) the restoring gain returns to one within this amount. */
const settleWithin = 0.03;

/** Dye left of an amount: fading takes a share of what is there (Wallace 1989, Topics in Photographic Preservation 3). */
export function faded(amount: number, loss: number): number {
  return (1 - loss) * amount;
}

/**
 * The amount that was there before: amount / (1 - loss). Below zero there is no dye to restore: the curve bends, its
 * slope kept at zero, to a plain shift, so noise in the clearest parts is not multiplied.
 */
export function unfaded(amount: number, loss: number): number {
  const gain = loss / (1 - loss);
  return amount >= 0
    ? amount + gain * amount
    : amount + gain * settleWithin * Math.expm1(amount / settleWithin);
}
