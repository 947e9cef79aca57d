import { ciede2000Run, labRun } from '../colour/difference.js';
import type { Primaries } from '../colour/primaries/index.js';
import { rgbToXyz } from '../colour/primaries/rgb-matrix.js';
import type { TransferFunction } from '../colour/transfer-functions/index.js';
import type { Run } from '../maths/matrix3.js';
import { transform3, transformRun3 } from '../maths/matrix3.js';
import { percentile } from '../maths/percentile.js';
import type { Blocks } from './blocks.js';
import { predictedMeans } from './blocks.js';

/** In what the recording's codes are seen, so that a difference of codes becomes one of colours. */
export interface SeenAs {
  readonly curve: TransferFunction;
  readonly primaries: Primaries;
}

/** How well a prediction meets the burnt still. */
export interface Fit {
  /** CIEDE2000 over the blocks. */
  readonly mean: number;
  readonly p95: number;
  /** Root mean square over the better 95 % of the blocks, codes of 255: dust on one of the stills does not count. */
  readonly rms: number;
  /** Distance of each block, codes of 255. */
  readonly distances: Float64Array;
}

function distances(predicted: Float64Array, burnt: Float64Array): Float64Array {
  return Float64Array.from({ length: burnt.length / 3 }, (_, i) => {
    const [r, g, b] = [0, 1, 2].map((c) => predicted[3 * i + c] - burnt[3 * i + c]);
    return 255 * Math.sqrt((r * r + g * g + b * b) / 3);
  });
}

function trimmedRms(values: Float64Array): number {
  const sorted = values.slice().sort();
  const kept = sorted.subarray(0, Math.max(1, Math.floor(0.95 * sorted.length)));
  return Math.sqrt(kept.reduce((sum, value) => sum + value * value, 0) / kept.length);
}

/** Root mean square of a prediction in codes of 255, for searches. */
export function misfit(blocks: Blocks, predict: Run): number {
  return trimmedRms(distances(predictedMeans(blocks, predict), blocks.burnt));
}

/** CIE L*a*b* of codes r g b, white as the curve has it. */
export function labOfCodes(codes: Float64Array, { curve, primaries }: SeenAs): Float64Array {
  const run = codes.map(curve.decode);
  const matrix = rgbToXyz(primaries);
  transformRun3(matrix, run, run.length / 3);
  const { whiteLight } = curve;
  labRun(run, run.length / 3, transform3(matrix, [whiteLight, whiteLight, whiteLight]));
  return run;
}

export function fit(blocks: Blocks, predict: Run, seenAs: SeenAs): Fit {
  const predicted = predictedMeans(blocks, predict);
  const differences = new Float64Array(blocks.count);
  ciede2000Run(labOfCodes(predicted, seenAs), labOfCodes(blocks.burnt, seenAs), blocks.count, differences);
  const apart = distances(predicted, blocks.burnt);
  return {
    mean: differences.reduce((sum, value) => sum + value, 0) / blocks.count,
    p95: percentile(differences, 0.95),
    rms: trimmedRms(apart),
    distances: apart,
  };
}

/**
 * How surely one prediction is better than another, block against block: the mean gain over its standard error.
 * Above 5 it is no chance.
 */
export function certainty(worse: Fit, better: Fit): number {
  const gains = worse.distances.map((value, i) => value - better.distances[i]);
  const mean = gains.reduce((sum, value) => sum + value, 0) / gains.length;
  const spread = Math.sqrt(gains.reduce((sum, value) => sum + (value - mean) ** 2, 0) / gains.length);
  return spread === 0 ? 0 : (mean / spread) * Math.sqrt(gains.length);
}
