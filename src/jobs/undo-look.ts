import { type CodeEnds, rangeScale } from '../colour/signal-range.js';
import { pictureRange } from '../lut/checks/neutral-axis.js';
import { lutFormats } from '../lut/formats/index.js';
import type { LutFormat } from '../lut/formats/lut-format.js';
import { sampleLut } from '../lut/interpolate.js';
import {
  type LossJudge,
  lossJudge,
  type Recording,
  type RoundTrip,
  roundTrip,
  undo,
} from '../lut/inverse.js';
import type { Lut } from '../lut/lattice.js';
import { type Provenance, provenanceKeys } from './build-look.js';
import { comesBackText } from './comes-back.js';
import { screenSignals, type Signals, signalText, signalToXyz } from './signal.js';

/** A LUT that was burnt in, as its file says. */
export interface BurntLut {
  readonly lut: Lut;
  /** Undefined where the file does not say: then taken as those of a screen, and not passed on. */
  readonly signals?: Signals;
  readonly name: string;
  /** SHA-256 of the file's bytes, 64 hexadecimal digits. */
  readonly sha256: string;
}

export interface UndoSettings {
  /** Nodes a side, 2..65. */
  readonly size: number;
  /** Values held within 0..1, for devices that take no others. */
  readonly clamp?: boolean;
  readonly title?: string;
  /** Nothing but size and rows. */
  readonly plain?: boolean;
  /** Kind of file; .cube when left out. */
  readonly format?: LutFormat;
  /** Bits of the recording that the look was burnt into. */
  readonly bits: number;
}

export interface WayBack {
  readonly lut: Lut;
  /** The file. */
  readonly text: string;
  readonly title: string;
  readonly trip: RoundTrip;
  /** The same in a device that cuts the table's values to 0..1. */
  readonly cutTrip: RoundTrip;
  /** What becomes of a still's own colours. */
  readonly judge: LossJudge;
}

/** Of the way that a grey goes, what must be left for it to count as recorded: a shoulder below it only rounds. */
const leastSlope = 0.25;
const steps = 256;

/**
 * Codes between which pictures lie before a look: from no light to white, and on as far as the look still tells lighter
 * greys apart (an open gate above diffuse white).
 */
function pictureCodes(lut: Lut, { input }: Signals): CodeEnds {
  const { black, white } = pictureRange({ decodeInput: signalToXyz(input) });
  const count = Math.floor((1 - white) * steps);
  const greys = Float64Array.from({ length: 3 * (count + 1) }, (_, i) => white + Math.floor(i / 3) / steps);
  sampleLut(lut)(greys, count + 1);
  const level = (i: number) => greys[3 * i] + greys[3 * i + 1] + greys[3 * i + 2];
  let kept = 0;
  while (kept < count && level(kept + 1) - level(kept) > (3 * leastSlope) / steps) kept++;
  return { black, white: kept === count && count > 0 ? 1 : white + kept / steps };
}

/** What the LUT takes and gives; of a screen where the file does not say. */
export const burntSignals = ({ signals }: Pick<BurntLut, 'signals'>): Signals => signals ?? screenSignals;

const cut = (lut: Lut): Lut => ({ ...lut, values: lut.values.map((v) => Math.min(1, Math.max(0, v))) });

function provenanceOf({ name, sha256, signals }: BurntLut, { lost }: RoundTrip, version: string): Provenance {
  return [
    [provenanceKeys.maker, `gatelight ${version}`],
    [provenanceKeys.undone, name],
    [provenanceKeys.undoneHash, sha256],
    [provenanceKeys.comesBack, comesBackText(lost)],
    ...(signals === undefined
      ? []
      : ([
          [provenanceKeys.input, signalText(signals.output)],
          [provenanceKeys.output, signalText(signals.input)],
        ] as const)),
  ];
}

/**
 * The way back from a burnt-in LUT, as the text of a LUT file, with what becomes of colours on the round trip.
 * @param version of the program, for the provenance
 * @throws InputError for a size that is not fitted, and for a plain file that would need more than size and rows
 */
export function undoLook(burnt: BurntLut, settings: UndoSettings, version: string): WayBack {
  const { input, output } = burntSignals(burnt);
  const picture = pictureCodes(burnt.lut, { input, output });
  const whole = undo(burnt.lut, { size: settings.size, picture });
  const held = cut(whole);
  const lut = settings.clamp === true ? held : whole;
  const title = settings.title ?? `Way back from ${burnt.name}`;
  const recording: Recording = { bits: settings.bits, picture, ends: rangeScale[output.range] };
  const look = sampleLut(burnt.lut);
  const cutTrip = roundTrip(look, sampleLut(held), recording);
  const trip = lut === held ? cutTrip : roundTrip(look, sampleLut(lut), recording);
  return {
    lut,
    text: (settings.format ?? lutFormats.cube).write(lut, {
      title,
      plain: settings.plain,
      comments: provenanceOf(burnt, trip, version),
    }),
    title,
    trip,
    cutTrip,
    judge: lossJudge(look, sampleLut(lut), recording),
  };
}
