import { changeBetween, lightRatio, likeness } from './compare-frames.js';
import { type LineSight, lineWatcher } from './frame-line.js';
import { type LightFrame, type SeenFrame, seeFrame } from './light-frame.js';

/** What is kept of a recording: a few numbers a frame, each about the step from the frame before (0 for the first). */
export interface Series {
  readonly frames: number;
  /** Logarithm of the ratio of light, and its standard error. */
  readonly ratios: Float64Array;
  readonly errors: Float64Array;
  /** Change of the picture apart from its light, as a share of the mean light. */
  readonly changes: Float64Array;
  /** Correlation of the two frames. */
  readonly likeness: Float64Array;
  /** Place of the frame line, NaN when it is not in view, and vertical moves: shares of the height. */
  readonly lines: Float64Array;
  readonly moves: Float64Array;
}

interface Step {
  readonly ratio: number;
  readonly error: number;
  readonly change: number;
  readonly likeness: number;
}

function stepTo(frame: SeenFrame, before: SeenFrame | undefined): Step {
  if (before === undefined) return { ratio: 0, error: Infinity, change: 0, likeness: 1 };
  const { log, error } = lightRatio(before, frame);
  return {
    ratio: log,
    error,
    change: changeBetween(before, frame, log),
    likeness: likeness(before, frame),
  };
}

/** Walks once through a recording; two small frames are held at a time. All frames must be of one size. */
export async function readSeries(
  recording: AsyncIterable<LightFrame> | Iterable<LightFrame>,
): Promise<Series> {
  const steps: (Step & LineSight)[] = [];
  const watch = lineWatcher();
  let before: SeenFrame | undefined;
  for await (const frame of recording) {
    const seen = seeFrame(frame);
    steps.push({ ...stepTo(seen, before), ...watch(frame) });
    before = seen;
  }
  const column = (of: keyof Step | keyof LineSight) => Float64Array.from(steps, (step) => step[of]);
  return {
    frames: steps.length,
    ratios: column('ratio'),
    errors: column('error'),
    changes: column('change'),
    likeness: column('likeness'),
    lines: column('line'),
    moves: column('move'),
  };
}
