import { seededRandom } from '../../maths/random.js';

/** Grain of small-gauge film: deviation in log10 exposure of each layer, on a grid of this many points across. */
const deviations = [0.02, 0.018, 0.026] as const;
const pointsAcross = 960;

/** Smooth noise of mean 0 and deviation 1 on a grid, each point sharing a part with its neighbours (1 2 1). */
function noiseField(width: number, height: number, seed: number): Float32Array {
  const random = seededRandom(seed);
  const field = new Float32Array(width * height);
  for (let i = 0; i < field.length; i++) field[i] = random() + random() - 1;
  smooth(field, width, height, 1);
  smooth(field, height, width, width);
  // Two uniform numbers have the variance 1/6; each pass leaves (1 + 4 + 1) / 16 of it.
  const gain = Math.sqrt(6) / (6 / 16);
  for (let i = 0; i < field.length; i++) field[i] *= gain;
  return field;
}

/** 1 2 1 along one direction, in place, the ends held. */
function smooth(field: Float32Array, length: number, lines: number, stride: number): void {
  const nextLine = stride === 1 ? length : 1;
  for (let line = 0; line < lines; line++) {
    let at = line * nextLine;
    let before = field[at];
    for (let i = 0; i < length; i++, at += stride) {
      const here = field[at];
      const after = i + 1 < length ? field[at + stride] : here;
      field[at] = 0.25 * before + 0.5 * here + 0.25 * after;
      before = here;
    }
  }
}

/**
 * Adds grain to log10 exposures r g b r g b ... of a whole frame, in place. The grain belongs to the film, so a larger
 * picture of the same frame shows the same grain larger.
 */
export function addGrain(values: Float64Array, width: number, height: number, seed: number): void {
  const size = pointsAcross / width;
  const columns = Math.ceil(width * size) + 2;
  const rows = Math.ceil(height * size) + 2;
  // A small picture averages the grain that falls into one of its pixels.
  const share = Math.min(1, 1 / size);
  deviations.forEach((deviation, layer) => {
    const field = noiseField(columns, rows, seed + layer);
    for (let y = 0, at = layer; y < height; y++) {
      const row = Math.floor(y * size);
      const down = y * size - row;
      for (let x = 0; x < width; x++, at += 3) {
        const column = Math.floor(x * size);
        const right = x * size - column;
        const i = row * columns + column;
        const upper = field[i] + right * (field[i + 1] - field[i]);
        const lower = field[i + columns] + right * (field[i + columns + 1] - field[i + columns]);
        values[at] += deviation * share * (upper + down * (lower - upper));
      }
    }
  });
}
