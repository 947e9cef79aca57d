import { rangeScale } from '../../colour/signal-range.js';
import { applyLook } from '../../jobs/apply-look.js';
import type { Signal } from '../../jobs/signal.js';
import type { Lut } from '../../lut/lattice.js';
import { drawHistogram } from '../../picture/histogram.js';
import { lastCode, type Picture } from '../../picture/picture.js';
import { drawWaveform } from '../../picture/waveform.js';
import { type CodeLimits, fullRangeLimits } from '../../preview/clipping-marks.js';
import { palette } from '../../preview/palette.js';
import { applyEngine } from './apply-engine.js';
import type { ScopeName } from './scope-names.js';
import { drawVectorscope } from '../display/vectorscope.js';

const inks: [typeof palette.red, typeof palette.green, typeof palette.blue] = [
  palette.red,
  palette.green,
  palette.blue,
];
const traces = { bed: palette.bed, gutter: palette.surround, inks, greyInk: palette.grey };

/** Draws one scope of a picture through a table, at a size in pixels; RGB bytes. */
export function drawScope(
  name: ScopeName,
  before: Picture,
  lut: Lut | undefined,
  width: number,
  height: number,
) {
  const after = lut === undefined ? before : applyLook(lut, before, applyEngine);
  const style = { ...traces, width, height };
  if (name === 'waveform') return drawWaveform(after, style);
  if (name === 'vectorscope') return drawVectorscope(after, { ...style, lineInk: palette.scaleLine });
  return drawHistogram(after, { ...style, lineInk: palette.comparison }, before);
}

/** Codes at and beyond which a signal has ended. */
export function limitsOf({ range }: Signal, picture: Picture): CodeLimits {
  if (range === 'full') return fullRangeLimits(picture);
  const last = lastCode(picture.bits);
  return {
    black: Math.round(rangeScale.legal.black * last),
    white: Math.round(rangeScale.legal.white * last),
  };
}
