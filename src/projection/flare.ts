import type { Run } from '../maths/matrix3.js';

/**
 * Veiling flare of lens, gate and room: a share of the open gate's light lies over the whole picture. The open gate
 * itself stays at one. Linear light relative to the open gate, in place.
 * @param share 0..1; 0.002 to 0.01 in practice (common practice, no source)
 */
export function flareRun(share: number): Run {
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = (values[i] + share) / (1 + share);
  };
}
