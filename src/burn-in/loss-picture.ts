import type { Loss, LossJudge } from '../lut/inverse.js';
import { losses } from '../lut/inverse.js';
import type { Ink } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { changeDepth, expandGrey, lastCode, makePicture } from '../picture/picture.js';
import { resample } from '../picture/resample.js';
import type { Hatching } from '../preview/clipping-marks.js';
import { drawMarks, hatchings } from '../preview/clipping-marks.js';
import { palette } from '../preview/palette.js';

/** Where on a still a look takes what no way back returns. */
export interface LossPicture {
  /** The still with the lost places marked; 8-bit RGB, at most {@link widest} pixels a side. */
  readonly picture: Picture;
  /** Share of the still's pixels lost for each cause, 0..1. */
  readonly shares: Readonly<Record<Loss, number>>;
}

/** Enough for a page; a larger still is brought down first. */
export const widest = 1600;

/** How each cause is marked: burnt out and blocked as everywhere, the rest by an open grid. */
const grid: Hatching = (x, y) => x % 7 === 0 || y % 7 === 0;
const marks: Partial<Record<Loss, { readonly hatching: Hatching; readonly ink: Ink }>> = {
  'burnt-out': { hatching: hatchings.burntOut, ink: palette.burntOut },
  blocked: { hatching: hatchings.blocked, ink: palette.blocked },
  folded: { hatching: grid, ink: palette.comparison },
  squeezed: { hatching: grid, ink: palette.quietText },
};

function brought(still: Picture): Picture {
  const scale = Math.min(1, widest / Math.max(still.width, still.height));
  const size = (length: number) => Math.max(1, Math.round(scale * length));
  return expandGrey(scale < 1 ? resample(still, size(still.width), size(still.height)) : still);
}

/** Three channels of 8 bits, alpha dropped. */
function canvasOf(still: Picture): Picture {
  const { width, height, channels, data } = changeDepth(still, 8);
  const out = makePicture(width, height, { channels: 3, bits: 8 });
  for (let i = 0; i < width * height; i++)
    for (let c = 0; c < 3; c++) out.data[3 * i + c] = data[channels * i + c];
  return out;
}

/** Why each pixel is lost, row by row. */
function causesOf(still: Picture, judge: LossJudge): (Loss | undefined)[] {
  const { width, height, channels, data } = still;
  const row = new Float64Array(3 * width);
  const out: (Loss | undefined)[] = [];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 3; c++)
        row[3 * x + c] = data[(y * width + x) * channels + c] / lastCode(still.bits);
    for (const cause of judge(row, width).causes) out.push(cause);
  }
  return out;
}

/**
 * Draws on a still, as it was before the look, where the look takes what its way back does not return.
 * @param judge from `lossJudge(look, back, bits)`
 */
export function lossPicture(still: Picture, judge: LossJudge): LossPicture {
  const small = brought(still);
  const picture = canvasOf(small);
  const causes = causesOf(small, judge);
  const box = { x: 0, y: 0, width: small.width, height: small.height };
  const shares = Object.fromEntries(
    (Object.keys(losses) as Loss[]).map((loss) => {
      const mask = Uint8Array.from(causes, (cause) => (cause === loss ? 255 : 0));
      const mark = marks[loss];
      if (mark !== undefined && mask.includes(255))
        drawMarks(
          picture,
          box,
          makePicture(box.width, box.height, { channels: 1, bits: 8 }, mask),
          mark.hatching,
          mark.ink,
        );
      return [loss, mask.reduce((sum, value) => sum + value / 255, 0) / mask.length];
    }),
  ) as Record<Loss, number>;
  return { picture, shares };
}
