import type { Triple } from '../../src/maths/matrix3.js';
import type { AmountCloud } from '../../src/measure/density-cloud.js';
import { sceneAmounts } from './filmed.js';

/** A scene's cloud, every colour of the same say, seen through factors and offsets. */
export function cloudOf(
  seed: number,
  factors: Triple,
  offsets: Triple = [0, 0, 0],
  cast: Triple = [0, 0, 0],
  count = 800,
): AmountCloud {
  const amounts = sceneAmounts(seed, count, cast).map((v, i) => v * factors[i % 3] + offsets[i % 3]);
  const even = new Float64Array(count).fill(1 / count);
  return { amounts: Float64Array.from(amounts), weights: even, shares: even };
}
