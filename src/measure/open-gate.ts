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

/** The level from the brightest parts of all stills that are not burnt out. */
function fromBrightest(stills: readonly LightBlocks[], last: number): number {
  const levels = stills.map(({ light, burntOut }) => {
    if (burntOut > glints || light.length === 0) return last;
    const brightest = new Float64Array(light.length / 3);
    for (let i = 0; i < brightest.length; i++)
      brightest[i] = Math.max(light[3 * i], light[3 * i + 1], light[3 * i + 2]);
    return percentile(brightest, 1 - glints);
  });
  return Math.min(last, Math.max(...levels) / clearestLetsThrough);
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
  const readable = clear.flatMap(({ light }) => light ?? []);
  const count = readable.length / 3;
  if (count > 0) {
    const mean = (k: number) => readable.reduce((sum, v, i) => (i % 3 === k ? sum + v / count : sum), 0);
    const light: Triple = [mean(0), mean(1), mean(2)];
    const level = given ?? (light[0] + light[1] + light[2]) / 3;
    return {
      level,
      from: given === undefined ? 'clear mark' : 'given',
      whiteBalance: densitiesOf(light, level),
    };
  }
  if (given !== undefined) return { level: given, from: 'given' };
  if (clear.length > 0) return { level: last, from: 'burnt-out clear mark' };
  return { level: fromBrightest(stills, last), from: 'brightest parts' };
}
