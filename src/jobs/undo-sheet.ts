import { type LossMark, lossMarks } from '../burn-in/loss-marks.js';
import type { ApplyEngine } from '../lut/engine/engine.js';
import { losses } from '../lut/inverse.js';
import type { Lut } from '../lut/lattice.js';
import type { Picture } from '../picture/picture.js';
import { drawReportSheet } from '../preview/report-sheet.js';
import type { LabelFonts } from '../preview/typeface.js';
import { applyLook } from './apply-look.js';
import { fileName } from './file-name.js';
import { shown } from './preview-look.js';
import type { Signals } from './signal.js';
import { lossNames, percent, sentenceStart, wayBackSentence } from './undo-words.js';
import type { WayBack } from './undo-look.js';

export interface StillLoss {
  readonly picture: Picture;
  readonly marks: readonly LossMark[];
}

/** What a still loses, in a few words: `1.2 % burnt out, 0.4 % off between the points`. */
export function stillWords(marks: readonly LossMark[]): string {
  if (marks.length === 0) return 'everything comes back';
  return marks.map(({ loss, share }) => `${percent(share)} ${lossNames[loss]}`).join(', ');
}

/**
 * Shows on a still where a burnt-in look takes what its way back does not return: the still before the look, and after look
 * and way back, with a mark for each cause.
 * @param look the LUT that is undone, with its signals
 * @param still code values as the camera wrote them, before the look
 */
export function undoSheet(
  look: { readonly lut: Lut; readonly signals: Signals },
  back: WayBack,
  still: { readonly name: string; readonly picture: Picture },
  fonts: LabelFonts,
  engine?: ApplyEngine,
): StillLoss {
  const { picture } = still;
  const marks = lossMarks(picture, back.judge);
  const burnt = applyLook(look.lut, picture, engine);
  const returned = applyLook(back.lut, burnt, engine);
  const sheet = {
    title: back.title,
    headline: `On this still: ${stillWords(marks)}.`,
    pictures: [
      { part: 'before the look', name: fileName(still.name), display: shown(picture, look.signals.input) },
      {
        part: 'after',
        name: 'the look and the way back',
        display: shown(returned, look.signals.input),
        marks,
        legend: marks.map(({ loss, share, ...drawn }) => ({
          text: `${lossNames[loss]}, ${percent(share)}`,
          ...drawn,
        })),
      },
    ],
    sentences: [
      ...marks.map(({ loss }) => `${sentenceStart(lossNames[loss])}: ${losses[loss]}.`),
      `${wayBackSentence(back)} That is the whole cube; a still has a part of it.`,
    ],
  };
  return { picture: drawReportSheet(sheet, fonts), marks };
}
