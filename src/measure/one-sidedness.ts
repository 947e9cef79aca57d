import type { AmountCloud } from './density-cloud.js';
import type { Axis } from './film-colours.js';

/** Tones between which a scene's colours show: not the film's clear and black ends, which are near neutral by nature. */
const [lightest, darkest] = [0.5, 2];

/**
 * How far a still's colours, brought back along the axis, still lean to one side: length of their mean deviation from
 * neutral, in equivalent density. Small where the scene has colours all round, large for a red curtain or a pool: what
 * such a scene says of fading is worth little. Without any middle tone, 0.
 */
export function oneSidedness({ amounts, weights }: AmountCloud, { logFactors, offsets }: Axis): number {
  const gains = logFactors.map((v) => Math.exp(-v));
  const sum = [0, 0, 0];
  let weight = 0;
  for (let i = 0; i < weights.length; i++) {
    const sound = gains.map((gain, k) => gain * (amounts[3 * i + k] - offsets[k]));
    const tone = (sound[0] + sound[1] + sound[2]) / 3;
    if (tone < lightest || tone > darkest) continue;
    sound.forEach((v, k) => (sum[k] += weights[i] * (v - tone)));
    weight += weights[i];
  }
  return weight > 0 ? Math.hypot(sum[0], sum[1], sum[2]) / weight : 0;
}

/** Lean from which a scene counts as one-coloured; no ordinary scene of the simulated ones leans further. */
export const oneColouredFrom = 0.6;
/** Whether most stills are of one colour, brought back along the axis: what they say of fading is thin evidence. */
export const mostlyOneColoured = (clouds: readonly AmountCloud[], axis: Axis): boolean =>
  2 * clouds.filter((cloud) => oneSidedness(cloud, axis) > oneColouredFrom).length > clouds.length;
