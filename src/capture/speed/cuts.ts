import { percentile } from '../../maths/percentile.js';
import type { Series } from './series.js';

/** Frames less alike than this, and changed so many times more than their neighbourhood, belong to two scenes. */
const alike = 0.8;
const strong = 2.5;
const neighbourhood = 12;

/** Middle of the values around a place, the place itself left out. */
export function around(values: Float64Array, at: number, reach: number, share = 0.5): number {
  const near = [...values.subarray(Math.max(1, at - reach), at), ...values.subarray(at + 1, at + reach + 1)];
  return percentile(Float64Array.from(near), share);
}

/** Frames that begin a new scene, or that cannot be compared with the one before; the first always. */
export function sceneStarts({ frames, errors, changes, likeness }: Series): boolean[] {
  return Array.from({ length: frames }, (_, n) => {
    if (n === 0 || errors[n] === Infinity) return true;
    return likeness[n] < alike && changes[n] > strong * around(changes, n, neighbourhood, 0.75);
  });
}
