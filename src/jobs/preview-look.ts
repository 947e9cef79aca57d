import { rangeScale } from '../colour/signal-range.js';
import type { ApplyEngine } from '../lut/engine/engine.js';
import type { Lut } from '../lut/lattice.js';
import type { Run } from '../maths/matrix3.js';
import { countLevels } from '../picture/level-counts.js';
import { changeDepth, colourChannels, expandGrey, lastCode, type Picture } from '../picture/picture.js';
import { fitWithin, resample } from '../picture/resample.js';
import { drawBeforeAfter } from '../preview/before-after.js';
import { type ClippingShares, type CodeLimits, fullRangeLimits } from '../preview/clipping-marks.js';
import type { LabelFonts } from '../preview/typeface.js';
import { applyLook } from './apply-look.js';
import { fileName } from './file-name.js';
import { type Signal, type Signals, toScreen } from './signal.js';
import { takenAs } from './taken-as.js';

/** Levels of one channel, per cent of the code range. */
export interface ChannelLevels {
  readonly darkest1Percent: number;
  readonly median: number;
  readonly brightest1Percent: number;
}

export interface PreviewFigures {
  readonly newlyLost: ClippingShares;
  readonly before: readonly ChannelLevels[];
  readonly after: readonly ChannelLevels[];
}

/** A picture's codes through a run, at its own depth. */
function throughRun(run: Run, picture: Picture): Picture {
  const last = lastCode(picture.bits);
  const data = picture.data.slice();
  const rgb = new Float64Array(3);
  for (let i = 0; i < data.length; i += picture.channels) {
    for (let c = 0; c < 3; c++) rgb[c] = data[i + c] / last;
    run(rgb, 1);
    for (let c = 0; c < 3; c++) data[i + c] = Math.round(last * rgb[c]);
  }
  return { ...picture, data };
}

/** As large as a page ever shows a still; conversion to the screen is worked at this size. */
const shownWithin = { width: 1200, height: 1200 };

/** What a still looks like on an ordinary screen, as large as a page shows it. */
export function shown(codes: Picture, signal: Signal): Picture {
  const { width, height } = fitWithin(codes, shownWithin);
  const small = width < codes.width ? resample(codes, width, height) : codes;
  const run = toScreen(signal);
  return run === undefined ? small : throughRun(run, changeDepth(small, 16));
}

/** Codes at and beyond which a signal has ended: the ends of its range. */
function limitsOf({ range }: Signal, picture: Picture): CodeLimits {
  if (range === 'full') return fullRangeLimits(picture);
  const last = lastCode(picture.bits);
  return {
    black: Math.round(rangeScale.legal.black * last),
    white: Math.round(rangeScale.legal.white * last),
  };
}

/** The level in per cent below which a share of the pixels lies. */
function levelAt(counts: ArrayLike<number>, share: number): number {
  let total = 0;
  for (let i = 0; i < counts.length; i++) total += counts[i];
  let sum = 0;
  for (let i = 0; i < counts.length; i++) {
    sum += counts[i];
    if (sum >= share * total) return (100 * i) / (counts.length - 1);
  }
  return 100;
}

function levels(picture: Picture): ChannelLevels[] {
  return Array.from({ length: colourChannels(picture) }, (_, channel) => {
    const { counts } = countLevels(picture, channel);
    return {
      darkest1Percent: levelAt(counts, 0.01),
      median: levelAt(counts, 0.5),
      brightest1Percent: levelAt(counts, 0.99),
    };
  });
}

/**
 * Shows a look on a still before anything is recorded with it: before and after side by side as an ordinary sRGB
 * screen shows them, with waveform, histogram and marks of what is newly lost.
 * @param still as the user gave its name; code values as the camera wrote them
 * @param name what the look is called
 * @param engine what the still goes through: see applyLook
 */
export function previewLook(
  lut: Lut,
  signals: Signals,
  still: { readonly name: string; readonly picture: Picture },
  name: string,
  fonts: LabelFonts,
  engine?: ApplyEngine,
): { picture: Picture; caption: string; figures: PreviewFigures } {
  const before = expandGrey(still.picture);
  const after = applyLook(lut, before, engine);
  const { picture, shares, caption } = drawBeforeAfter(
    {
      name: [fileName(still.name), takenAs(signals.input)].filter(Boolean).join(', '),
      display: shown(before, signals.input),
      codes: before,
      limits: limitsOf(signals.input, before),
    },
    { name, display: shown(after, signals.output), codes: after, limits: limitsOf(signals.output, after) },
    fonts,
  );
  return { picture, caption, figures: { newlyLost: shares, before: levels(before), after: levels(after) } };
}
