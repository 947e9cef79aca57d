import type { TransferFunction } from '../colour/transfer-functions/index.js';
import type { Triple } from '../maths/matrix3.js';
import { percentile } from '../maths/percentile.js';
import type { LightBlocks } from './light-blocks.js';
import { densitiesOf, type MarkReading } from './marks.js';

/** The light without film, and how it is known. */
export interface OpenGate {
  /** Linear level on the camera's scale. */
  readonly level: number;
  readonly from: 'given' | 'clear mark' | 'burnt-out clear mark' | 'brightest parts';
  /** Densities of the bare light itself: 0 0 0 if the camera's white balance is right. Only a clear mark tells. */
  readonly whiteBalance?: Triple;
}

/** Share of blocks that may be brighter than what is taken as the picture's brightest: dust, glints. */
const glints = 0.002;
/** The clearest picture part of a reel lets through about this share of the open gate (density 0.05 to 0.1). */
const clearestLetsThrough = 1 / 1.12;

/** Level (of the last code's light) that an open gate usually has: exposed for, and not burnt out. */
const usualLevel = 0.85;
/** How much more than the brightest part, so seen, may lie at the open gate: scenes without a white or a sky. */
const dimmest = 1.4;

/** The level from the brightest parts of all stills that are not burnt out. */
function fromBrightest(stills: readonly LightBlocks[], last: number): number {
  const levels = stills.map(({ light, burntOut }) => {
    if (burntOut > glints || light.length === 0) return last;
    const brightest = new Float64Array(light.length / 3);
    for (let i = 0; i < brightest.length; i++)
      brightest[i] = Math.max(light[3 * i], light[3 * i + 1], light[3 * i + 2]);
    return percentile(brightest, 1 - glints);
  });
  const least = Math.max(...levels) / clearestLetsThrough;
  return Math.min(last, Math.max(least, Math.min(usualLevel * last, dimmest * least)));
}

/**
 * Where the light without film lies: as given, else from clear marks, else guessed from the brightest parts.
 * @param given linear level that the user knows
 */
export function openGate(
  stills: readonly LightBlocks[],
  clear: readonly MarkReading[],
  encoding: TransferFunction,
  given?: number,
): OpenGate {
  const last = encoding.decode(1);
  const readable = clear.flatMap(({ light }) => (light === undefined ? [] : [light]));
  const seen = readable.length > 0 ? readable : clear.map(({ atLeast }) => atLeast);
  if (seen.length > 0) {
    const mean = (k: number) => seen.reduce((sum, light) => sum + light[k] / seen.length, 0);
    const light: Triple = [mean(0), mean(1), mean(2)];
    const level = given ?? (light[0] + light[1] + light[2]) / 3;
    const from = readable.length > 0 ? 'clear mark' : 'burnt-out clear mark';
    return { level, from: given === undefined ? from : 'given', whiteBalance: densitiesOf(light, level) };
  }
  if (given !== undefined) return { level: given, from: 'given' };
  return { level: fromBrightest(stills, last), from: 'brightest parts' };
}
