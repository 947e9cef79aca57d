import type { Siting } from './planes.js';

// Colour differences at half the pixels, and back, linearly both ways.

/**
 * Spreading, of the two pixels that stand for one value: the share of the value before in the first, and of the value
 * behind in the second; the rest is the value's own.
 */
export const spreadShares = {
  first: { before: 0, behind: 1 / 2 },
  midway: { before: 1 / 4, behind: 1 / 4 },
} as const satisfies Record<Siting, { before: number; behind: number }>;

/** Spreads `count` values to `length` = 2 count or 2 count - 1 places along a line, linearly; ends are held. */
export function spreadLine(source: Float32Array, target: Float32Array, length: number, siting: Siting): void {
  const last = ((length + 1) >> 1) - 1;
  const { before, behind } = spreadShares[siting];
  for (let i = 0; i <= last; i++) {
    const here = source[i];
    target[2 * i] = (1 - before) * here + before * source[Math.max(0, i - 1)];
    if (2 * i + 1 < length) target[2 * i + 1] = (1 - behind) * here + behind * source[Math.min(last, i + 1)];
  }
}

/**
 * The two of `lines` lines of colour differences between which line `y` of the picture lies, where one stands for two, and
 * the share of the other.
 */
export function linesAround(
  y: number,
  lines: number,
  siting: Siting,
): { readonly here: number; readonly other: number; readonly share: number } {
  const here = y >> 1;
  const odd = (y & 1) === 1;
  const share = siting === 'midway' ? 0.25 : odd ? 0.5 : 0;
  const other = odd ? here + 1 : share === 0 ? here : here - 1;
  return { here, other: Math.min(lines - 1, Math.max(0, other)), share };
}

/**
 * Weights that take pixels together: the triangle of the linear spreading, twice as wide, so that no detail is left which
 * would fold. What other programs call bilinear.
 */
const gathering = {
  first: { from: -1, weights: [1 / 4, 1 / 2, 1 / 4] },
  midway: { from: -1, weights: [1 / 8, 3 / 8, 3 / 8, 1 / 8] },
} as const satisfies Record<Siting, { from: number; weights: readonly number[] }>;

/** A place beyond an end, mirrored about the picture's edge: so beyond it lies what lies at it, as where ends are held. */
function mirrored(place: number, length: number): number {
  const inside = place < 0 ? -1 - place : place >= length ? 2 * length - 1 - place : place;
  return Math.min(length - 1, Math.max(0, inside));
}

/** For each of `ceil(length / 2)` results, the places that are taken together; weights are those of {@link gatherWeights}. */
export function gatherPlaces(length: number, siting: Siting): Int32Array {
  const { from, weights } = gathering[siting];
  const count = (length + 1) >> 1;
  return Int32Array.from({ length: count * weights.length }, (_, i) =>
    mirrored(2 * Math.floor(i / weights.length) + from + (i % weights.length), length),
  );
}

export const gatherWeights = (siting: Siting): readonly number[] => gathering[siting].weights;
