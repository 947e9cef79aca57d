import { ciede2000Run, labRun } from '../../../src/colour/difference.js';
import { primaries } from '../../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../../src/colour/primaries/rgb-matrix.js';
import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import { transform3, transformRun3, type Run } from '../../../src/maths/matrix3.js';
import type { Encoding, Frame, Reel } from './simulate/reel.js';

const toXyz = rgbToXyz(primaries.bt709);
const white = transform3(toXyz, [1, 1, 1]);

/** Every so many pixels of a frame are compared; a prime, so that no column is favoured. */
const everyPixel = 13;

/** Code values 0..1 of some pixels of a frame, as given and as they should be. */
export function samples(frame: Frame, every = everyPixel): { codes: Float64Array; truth: Float64Array } {
  const { data, bits } = frame.picture;
  const last = bits === 8 ? 255 : 65535;
  const places: number[] = [];
  for (let i = 0; i < data.length / 3; i += every) places.push(3 * i, 3 * i + 1, 3 * i + 2);
  return {
    codes: Float64Array.from(places, (i) => data[i] / last),
    truth: Float64Array.from(places, (i) => frame.truth[i]),
  };
}

function lab(codes: Float64Array, encoding: Encoding): Float64Array {
  const { decode } = transferFunctions[encoding];
  const values = codes.map((code) => decode(Math.min(1, Math.max(0, code))));
  transformRun3(toXyz, values, values.length / 3);
  labRun(values, values.length / 3, white);
  return values;
}

/** CIEDE2000 of each sample. */
export function differences(codes: Float64Array, truth: Float64Array, encoding: Encoding): Float64Array {
  const out = new Float64Array(codes.length / 3);
  ciede2000Run(lab(codes, encoding), lab(truth, encoding), out.length, out);
  return out;
}

export const mean = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i];
  return sum / values.length;
};

/** What a correction does to a reel: mean CIEDE2000 of every frame, and the share of pixels newly burnt out or blocked. */
export interface Score {
  readonly frames: readonly number[];
  readonly newlyCut: number;
}

/** Half a code of 8 bits: beyond, a channel is at its end. */
const end = 0.5 / 255;

export function score(reel: Reel, frames: readonly Frame[], correct: Run): Score {
  let [cut, all] = [0, 0];
  const means = frames.map((frame) => {
    const { codes, truth } = samples(frame);
    const out = codes.slice();
    correct(out, out.length / 3);
    for (let i = 0; i < out.length; i += 3) {
      // newly: neither was the pixel cut as given, nor is it in the unfaded frame
      const at = (values: Float64Array) =>
        [0, 1, 2].some((k) => values[i + k] >= 1 - end || values[i + k] <= end);
      if (at(out) && !at(codes) && !at(truth)) cut++;
      all++;
    }
    return mean(differences(out, truth, reel.encoding));
  });
  return { frames: means, newlyCut: cut / all };
}
