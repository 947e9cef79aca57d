import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { lookSchema } from '../../../src/look/look-schema.js';
import type { Run } from '../../../src/maths/matrix3.js';
import { percentile } from '../../../src/maths/percentile.js';
import { minimise } from './simplex.js';
import { differences, mean, samples } from './score.js';
import type { Encoding, Frame, Reel } from './simulate/reel.js';

const channel = (values: Float64Array, k: number): Float64Array => values.filter((_, i) => i % 3 === k);
const pooled = (frames: readonly Frame[]): Float64Array =>
  Float64Array.from(frames.flatMap((frame) => [...samples(frame).codes]));

/** Linear light times a gain a channel. */
function gains(encoding: Encoding, factors: readonly number[]): Run {
  const { decode, encode } = transferFunctions[encoding];
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = Math.min(1, encode(decode(values[i]) * factors[i % 3]));
  };
}

/** Gains that make the mean of all stills grey. */
export function greyWorld(reel: Reel, stills: readonly Frame[]): Run {
  const light = pooled(stills).map(transferFunctions[reel.encoding].decode);
  const means = [0, 1, 2].map((k) => mean(channel(light, k)));
  const grey = (means[0] + means[1] + means[2]) / 3;
  return gains(
    reel.encoding,
    means.map((m) => grey / m),
  );
}

/** Gains that make the brightest of each channel equal. */
export function whitePatch(reel: Reel, stills: readonly Frame[]): Run {
  const light = pooled(stills).map(transferFunctions[reel.encoding].decode);
  const tops = [0, 1, 2].map((k) => percentile(channel(light, k), 0.99));
  return gains(
    reel.encoding,
    tops.map((top) => Math.max(...tops) / top),
  );
}

/** Each channel of the code values stretched so that its half per cents lie at the ends. */
export function histogramStretch(_reel: Reel, stills: readonly Frame[]): Run {
  const codes = pooled(stills);
  const ends = [0, 1, 2].map((k) => {
    const values = channel(codes, k);
    return [percentile(values, 0.005), percentile(values, 0.995)] as const;
  });
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) {
      const [low, high] = ends[i % 3];
      values[i] = Math.min(1, Math.max(0, (values[i] - low) / (high - low)));
    }
  };
}

/** Pixels of every frame that a bound is fitted to: fewer, since each trial compares them all. */
const everyFitted = 211;

/** The parameters of a correction that bring all frames closest to the truth: what no estimate can beat. */
function fitToTruth(
  reel: Reel,
  frames: readonly Frame[],
  start: readonly number[],
  make: (x: readonly number[]) => Run,
): Run {
  const all = frames.map((frame) => samples(frame, everyFitted));
  const cost = (x: readonly number[]) => {
    const run = make(x);
    return mean(
      all.map(({ codes, truth }) => {
        const out = codes.slice();
        run(out, out.length / 3);
        return mean(differences(out, truth, reel.encoding));
      }),
    );
  };
  const steps = start.map((_, i) => (i < 3 ? 0.15 : 0.05));
  const first = minimise(cost, start, steps, { most: 160, enough: 1e-3 });
  return make(
    minimise(
      cost,
      first.at,
      steps.map((s) => s / 3),
      { most: 160, enough: 1e-3 },
    ).at,
  );
}

/** The best gain and offset in density for each channel. */
export function bestLinearDensity(reel: Reel, frames: readonly Frame[]): Run {
  const { decode, encode } = transferFunctions[reel.encoding];
  return fitToTruth(reel, frames, [1, 1, 1, 0, 0, 0], (x) => (values, count) => {
    for (let i = 0; i < 3 * count; i++) {
      const light = Math.max(1e-5, decode(values[i]));
      values[i] = Math.min(1, Math.max(0, encode(10 ** -x[3 + (i % 3)] * light ** x[i % 3])));
    }
  });
}

/** The best three losses and three offsets, solved spectrally with the dye set that suits best. */
export function bestLosses(reel: Reel, frames: readonly Frame[]): Run {
  const limit = (v: number, low: number, high: number) => Math.max(low, Math.min(high, v));
  return fitToTruth(reel, frames, [0.2, 0.1, 0.2, 0, 0, 0], (x) => {
    const [cyan, magenta, yellow] = x.slice(0, 3).map((v) => limit(v, 0, 0.9));
    const [red, green, blue] = x.slice(3).map((v) => limit(v, -0.2, 1));
    return compileLook(
      lookSchema.parse({
        name: 'bound',
        camera: { encoding: reel.encoding, openGate: 0.9 },
        stock: { loss: { cyan, magenta, yellow }, stain: { red, green, blue } },
      }),
    );
  });
}
