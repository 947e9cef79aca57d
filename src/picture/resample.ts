import { hasAlpha, makePicture } from './picture.js';
import type { Picture } from './picture.js';

/** For each target cell the source cells it covers, and the share of the target that each fills (sum 1). */
interface Coverage {
  readonly first: Int32Array;
  readonly shares: readonly Float64Array[];
}

/** How `target` equal cells lie over `source` equal cells of the same total length. */
export function areaCoverage(source: number, target: number): Coverage {
  const first = new Int32Array(target);
  const shares: Float64Array[] = [];
  const step = source / target;
  for (let i = 0; i < target; i++) {
    // Whole numbers divided last, so that borders that coincide do so exactly.
    const [from, to] = [(i * source) / target, ((i + 1) * source) / target];
    first[i] = Math.floor(from);
    const count = Math.max(1, Math.ceil(to) - first[i]);
    shares.push(
      Float64Array.from({ length: count }, (_, k) => {
        const cell = first[i] + k;
        return Math.max(0, Math.min(to, cell + 1) - Math.max(from, cell)) / step;
      }),
    );
  }
  return { first, shares };
}

/** A row of `channels` interleaved numbers averaged into the cells of a coverage. */
function averageRow(
  row: Float64Array,
  channels: number,
  { first, shares }: Coverage,
  out: Float64Array,
): void {
  out.fill(0);
  for (let i = 0, to = 0; i < first.length; i++)
    for (let c = 0; c < channels; c++, to++)
      for (let k = 0; k < shares[i].length; k++) out[to] += shares[i][k] * row[(first[i] + k) * channels + c];
}

/** One row of the source as numbers; colours weighted by alpha, so that what cannot be seen does not count. */
function weightedRow(picture: Picture, y: number, row: Float64Array): void {
  const { width, channels, data } = picture;
  const length = width * channels;
  for (let i = 0; i < length; i++) row[i] = data[y * length + i];
  if (!hasAlpha(picture)) return;
  for (let i = 0; i < length; i += channels)
    for (let c = 0; c < channels - 1; c++) row[i + c] *= row[i + channels - 1];
}

function writeRow(out: Picture, y: number, row: Float64Array): void {
  const { channels, data } = out;
  const start = y * row.length;
  for (let i = 0; i < row.length; i += channels) {
    const alpha = hasAlpha(out) ? row[i + channels - 1] : 1;
    const colours = hasAlpha(out) ? channels - 1 : channels;
    for (let c = 0; c < colours; c++) data[start + i + c] = alpha === 0 ? 0 : Math.round(row[i + c] / alpha);
    if (colours < channels) data[start + i + colours] = Math.round(alpha);
  }
}

/**
 * The picture at another size, each pixel the average of the area it covers. The average is taken of the code values,
 * not of light: good enough to look at, not for measuring. Alpha is kept and weighs the colours. Enlarging repeats pixels.
 * @param width,height the new size in pixels, whole and at least 1
 */
export function resample(picture: Picture, width: number, height: number): Picture {
  if (width === picture.width && height === picture.height) return picture;
  const out = makePicture(width, height, picture);
  const across = areaCoverage(picture.width, width);
  const down = areaCoverage(picture.height, height);
  const row = new Float64Array(picture.width * picture.channels);
  const sum = new Float64Array(width * picture.channels);
  // A source row is met again only by the target row below it: the last one averaged is kept.
  let keptAt = -1;
  const kept = new Float64Array(sum.length);
  for (let y = 0; y < height; y++) {
    sum.fill(0);
    down.shares[y].forEach((share, k) => {
      const at = down.first[y] + k;
      if (at !== keptAt) {
        weightedRow(picture, at, row);
        averageRow(row, picture.channels, across, kept);
        keptAt = at;
      }
      for (let i = 0; i < sum.length; i++) sum[i] += share * kept[i];
    });
    writeRow(out, y, sum);
  }
  return out;
}

/**
 * The size that fits a box with the aspect ratio kept, at least 1 x 1. Enlarging is by whole factors only, so that
 * pixels repeated stay square and sharp.
 */
export function fitWithin(
  size: Pick<Picture, 'width' | 'height'>,
  box: Pick<Picture, 'width' | 'height'>,
): { width: number; height: number } {
  const ratio = Math.min(box.width / size.width, box.height / size.height);
  const factor = ratio >= 1 ? Math.floor(ratio) : ratio;
  const side = (length: number) => Math.max(1, Math.round(length * factor));
  return { width: side(size.width), height: side(size.height) };
}
