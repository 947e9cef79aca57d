import type { Loss, LossJudge } from '../lut/inverse.js';
import { losses } from '../lut/inverse.js';
import type { Ink } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { expandGrey, lastCode, makePicture } from '../picture/picture.js';
import { fitWithin, resample } from '../picture/resample.js';
import type { Hatching } from '../preview/clipping-marks.js';
import { hatchings } from '../preview/clipping-marks.js';
import { palette } from '../preview/palette.js';

/** Where on a still a look takes, for one cause, what its way back does not return. */
export interface LossMark {
  readonly loss: Loss;
  /** Share of the still's pixels, 0..1; transparent ones do not count. */
  readonly share: number;
  /** 0 and 255, 8-bit grey. */
  readonly mask: Picture;
  /** How such places are drawn, each cause in a form of its own. */
  readonly hatching: Hatching;
  readonly ink: Ink;
  /** What the hatching is told from in a legend. */
  readonly bed: Ink;
}

/** Enough pixels a side for a page; a larger still is brought down first. */
export const widest = 1600;

/** Burnt out and blocked are marked as everywhere. */
const marks: Readonly<Record<Loss, Pick<LossMark, 'hatching' | 'ink' | 'bed'>>> = {
  'burnt-out': { hatching: hatchings.burntOut, ink: palette.burntOut, bed: palette.burntOutBed },
  blocked: { hatching: hatchings.blocked, ink: palette.blocked, bed: palette.blockedBed },
  folded: { hatching: (x, y) => x % 7 === 0 || y % 7 === 0, ink: palette.comparison, bed: palette.bed },
  squeezed: { hatching: (_, y) => y % 5 === 0, ink: palette.comparison, bed: palette.bed },
  coarse: { hatching: (x) => x % 5 === 0, ink: palette.comparison, bed: palette.bed },
};

function broughtDown(still: Picture): Picture {
  const { width, height } = fitWithin(still, { width: widest, height: widest });
  return expandGrey(width < still.width ? resample(still, width, height) : still);
}

/** Why each pixel is lost, row by row; undefined where it comes back, and where nothing is seen. */
function causesOf(still: Picture, judge: LossJudge): (Loss | undefined)[] {
  const { width, height, channels, data } = still;
  const row = new Float64Array(3 * width);
  const out: (Loss | undefined)[] = [];
  for (let y = 0; y < height; y++) {
    const at = (x: number) => (y * width + x) * channels;
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 3; c++) row[3 * x + c] = data[at(x) + c] / lastCode(still.bits);
    judge(row, width).causes.forEach((cause, x) =>
      out.push(channels === 4 && data[at(x) + 3] === 0 ? undefined : cause),
    );
  }
  return out;
}

/** Pixels that can be seen. */
function visible({ channels, data }: Picture): number {
  if (channels < 4) return data.length / channels;
  let count = 0;
  for (let i = 3; i < data.length; i += 4) if (data[i] > 0) count++;
  return count;
}

/**
 * Says where on a still, as it was before the look, the look takes what its way back does not return: one mark for each
 * cause that is met, the order that of {@link losses}.
 * @param judge from `lossJudge`
 */
export function lossMarks(still: Picture, judge: LossJudge): LossMark[] {
  const small = broughtDown(still);
  const causes = causesOf(small, judge);
  const seen = Math.max(1, visible(small));
  return (Object.keys(losses) as Loss[]).flatMap((loss): LossMark[] => {
    const mask = Uint8Array.from(causes, (cause) => (cause === loss ? 255 : 0));
    const count = mask.reduce((sum, value) => sum + value / 255, 0);
    if (count === 0) return [];
    const kind = { channels: 1, bits: 8 } as const;
    return [
      { loss, share: count / seen, mask: makePicture(small.width, small.height, kind, mask), ...marks[loss] },
    ];
  });
}
