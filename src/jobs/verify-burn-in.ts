import type { CauseContext } from '../burn-in/causes/index.js';
import { type DifferenceMap, differenceMap } from '../burn-in/difference-map.js';
import type { SeenAs } from '../burn-in/fit.js';
import { type Verdict, verify } from '../burn-in/verify.js';
import { namesApart } from '../capture/names-apart.js';
import { fromFull, toFull } from '../colour/signal-range.js';
import type { TransferFunction } from '../colour/transfer-functions/transfer-function.js';
import { primariesOf, transferFunctionOf } from '../look/sections/signal.js';
import type { ApplyEngine } from '../lut/engine/engine.js';
import type { Lut } from '../lut/lattice.js';
import { fillBox, makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from '../preview/palette.js';
import { drawReportSheet, type LegendEntry } from '../preview/report-sheet.js';
import type { LabelFonts } from '../preview/typeface.js';
import { applyLook } from './apply-look.js';
import { verdictSentence, verdictSentences } from './burn-in-words.js';
import { shown } from './preview-look.js';
import { shownWhite, type Signal, type Signals } from './signal.js';

interface NamedStill {
  readonly name: string;
  readonly picture: Picture;
}

/** Two stills of one frame, and the LUT that should lie between them. */
export interface BurnIn {
  /** Recorded without the look. */
  readonly plain: NamedStill;
  /** Recorded with it. */
  readonly burnt: NamedStill;
  readonly look: { readonly name: string; readonly lut: Lut; readonly signals: Signals };
  /** Other files that may have been loaded instead. */
  readonly others?: CauseContext['others'];
}

/** A signal's transfer function with its range in it: whole code values. */
function curveOf(signal: Signal): TransferFunction {
  const { encoding, range } = signal;
  const curve = transferFunctionOf(encoding);
  return {
    ...curve,
    whiteLight: shownWhite(signal),
    decode: (code) => curve.decode(toFull(code, range)),
    encode: (light) => fromFull(curve.encode(light), range),
  };
}

const seenAsOf = (signal: Signal): SeenAs => ({
  curve: curveOf(signal),
  primaries: primariesOf(signal.primaries),
});

/**
 * Says whether a device did what a LUT file says: see burn-in/verify.ts.
 * @throws InputError when the stills cannot be compared
 */
export function verifyBurnIn({ plain, burnt, look, others = [] }: BurnIn): Verdict {
  return verify(plain.picture, burnt.picture, look.lut, {
    cameraCurve: curveOf(look.signals.input),
    ...seenAsOf(look.signals.output),
    others,
  });
}

/** CIEDE2000 from which a place has the next lighter shade. */
const shades = [1, 2, 5, 10] as const;

const shadeOf = (value: number) => shades.filter((from) => value >= from).length;

const legend: readonly LegendEntry[] = palette.difference.map((bed, i) => ({
  bed,
  text:
    i === 0
      ? `below ${shades[0]}`
      : i === shades.length
        ? `${shades[i - 1]} or more`
        : `${shades[i - 1]} to ${shades[i]}`,
}));

/** The map as a picture of the stills' size; the border that is not compared has the page's colour. */
function mapPicture({ cell, left, top, across, values }: DifferenceMap, { width, height }: Picture): Picture {
  const canvas = makeCanvas(width, height, palette.surround);
  values.forEach((value, i) => {
    const box = {
      x: left + cell * (i % across),
      y: top + cell * Math.floor(i / across),
      width: cell,
      height: cell,
    };
    fillBox(canvas, box, palette.difference[shadeOf(value)]);
  });
  return canvas;
}

/**
 * A verdict as a picture: what was expected and what was burnt in, the plain still, and where the two differ.
 * @param verdict of {@link verifyBurnIn} for the same burn-in
 */
export function burnInSheet(
  { plain, burnt, look }: BurnIn,
  verdict: Verdict,
  fonts: LabelFonts,
  engine?: ApplyEngine,
): Picture {
  const { input, output } = look.signals;
  const names = namesApart([burnt.name, plain.name]);
  const expected = applyLook(look.lut, plain.picture, engine);
  const map = differenceMap(expected, burnt.picture, verdict.shift, seenAsOf(output));
  return drawReportSheet(
    {
      title: `Burn-in of ${look.name}`,
      headline: verdictSentence(verdict),
      pictures: [
        { part: 'expected', name: look.name, display: shown(expected, output) },
        { part: 'burnt', name: names[0], display: shown(burnt.picture, output) },
        { part: 'plain', name: names[1], display: shown(plain.picture, input) },
        {
          part: 'difference',
          name: 'CIEDE2000 between expected and burnt',
          display: mapPicture(map, burnt.picture),
          legend,
        },
      ],
      sentences: verdictSentences(verdict),
    },
    fonts,
  );
}
