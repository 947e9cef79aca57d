import { type DensityPoint, furthest, newPoint, newtonMove, slopesAt } from './density-point.js';

/** Colours this near one another, in density, lead from one to the other. */
const near = 0.25;
/** The furthest that amounts are led, and the longest step, against the one before, that a bend is carried on over. */
const furthestLead = 0.8;
const longestRatio = 2;

/** A colour whose amounts were found, with the slopes there. */
interface Found {
  /** Its own densities, and the slopes next to them. */
  readonly point: DensityPoint;
  readonly reached: Float64Array;
}

const newFound = (): Found => ({ point: newPoint().fill(Infinity), reached: new Float64Array(3) });

/** The way from colour to colour, that tells where the next one's amounts lie. */
export interface AmountTrail {
  /** Amounts where those of `target` are likely; false where no colour near it was found. */
  lead(target: Float64Array, amounts: Float64Array): boolean;
  /** The amounts of the colour that was asked for last, and a point next to them for its slopes. */
  add(densities: Float64Array, reached: Float64Array, point: DensityPoint): void;
}

/**
 * Remembers the colour before, and the one that began its row of neighbours: in a lattice the next row begins near it.
 * From the colour before, the slopes lead on; what they missed over the last step, and how that changed, is carried on as
 * the square and the cube of the step's length.
 */
export function amountTrail(): AmountTrail {
  const before = newFound();
  const rowStart = newFound();
  const move = new Float64Array(3);
  /** Where the slopes alone led, what they missed, and how much more than the step before let expect. */
  const led = new Float64Array(3);
  const missed = new Float64Array(3);
  const surprise = new Float64Array(3);
  /** The last step, in densities, and its squared length: 0 where none leads on. */
  const step = new Float64Array(3);
  let squared = 0;
  /** The next step as a multiple of the last, 0 where the last tells nothing of it; whether it goes on from the colour before. */
  let ratio = 0;
  let goesOn = false;

  function ratioOf(target: Float64Array): number {
    if (squared === 0) return 0;
    let product = 0;
    for (let k = 0; k < 3; k++) product += step[k] * (target[k] - before.point[k]);
    const ratio = product / squared;
    return Math.abs(ratio) < longestRatio ? ratio : 0;
  }

  function leadFrom(found: Found, target: Float64Array, amounts: Float64Array): void {
    newtonMove(found.point, target, move, furthestLead);
    for (let k = 0; k < 3; k++) amounts[k] = found.reached[k] + move[k];
  }

  return {
    lead(target, amounts) {
      const toBefore = furthest(before.point, target);
      const toStart = furthest(rowStart.point, target);
      goesOn = toBefore < near && toBefore <= toStart;
      if (!goesOn) {
        if (toStart < near) leadFrom(rowStart, target, amounts);
        return toStart < near;
      }
      leadFrom(before, target, amounts);
      for (let k = 0; k < 3; k++) led[k] = amounts[k];
      ratio = ratioOf(target);
      for (let k = 0; k < 3; k++) amounts[k] += ratio * ratio * (missed[k] + ratio * surprise[k]);
      return true;
    },

    add(densities, reached, point) {
      for (let k = 0; k < 3; k++) {
        const miss = goesOn ? reached[k] - led[k] : 0;
        surprise[k] = goesOn && squared > 0 ? miss - ratio * ratio * missed[k] : 0;
        missed[k] = miss;
        step[k] = densities[k] - before.point[k];
      }
      squared = goesOn ? step[0] * step[0] + step[1] * step[1] + step[2] * step[2] : 0;
      remember(before, densities, reached, point);
      if (!goesOn) remember(rowStart, densities, reached, point);
    },
  };
}

function remember(found: Found, densities: Float64Array, reached: Float64Array, point: DensityPoint): void {
  for (let k = slopesAt; k < point.length; k++) found.point[k] = point[k];
  for (let k = 0; k < 3; k++) {
    found.point[k] = densities[k];
    found.reached[k] = reached[k];
  }
}
