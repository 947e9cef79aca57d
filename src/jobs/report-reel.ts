import { compileLook } from '../look/compile-look.js';
import type { Look } from '../look/look-schema.js';
import { inTurn } from '../look/sections/section.js';
import type { ApplyEngine } from '../lut/engine/engine.js';
import { type Lut, sampleLattice } from '../lut/lattice.js';
import type { Run } from '../maths/matrix3.js';
import { markKinds, type Measurement, type Still } from '../measure/index.js';
import { changeDepth, type Picture } from '../picture/picture.js';
import { fitWithin, resample } from '../picture/resample.js';
import { drawReelReport, type LossBar, type MarkedPart } from '../preview/reel-report.js';
import type { LabelFonts } from '../preview/typeface.js';
import { applyLook } from './apply-look.js';
import { correctionOf, type MeasuredReel } from './measure-reel.js';
import {
  doubts,
  dyeNames,
  expectedWords,
  headline,
  lightNames,
  lossWords,
  openGateWords,
  stainWords,
  strayLightWords,
  surenessWords,
} from './reel-words.js';
import { cloudsOf, pointNames } from './report-clouds.js';
import { signalsOf, toScreen } from './signal.js';

/** As large as the report shows a still. */
const shownWithin = { width: 740, height: 555 };
const nodes = 33;

const lutOf = (...runs: readonly Run[]): Lut => sampleLattice(inTurn(runs), nodes);

/** What makes a still look on an ordinary screen as recorded, and as corrected. */
function screens(correction: Look): { before: Lut; after: Lut } {
  const { input, output } = signalsOf(correction);
  const shown = (signal: typeof input) => toScreen(signal) ?? (() => {});
  return { before: lutOf(shown(input)), after: lutOf(compileLook(correction), shown(output)) };
}

function small(picture: Picture): Picture {
  const { width, height } = fitWithin(picture, shownWithin);
  return changeDepth(width < picture.width ? resample(picture, width, height) : picture, 16);
}

/** Rectangles marked in a still, as shares of its sides. */
function markedIn({ marks, usable }: MeasuredReel, still: number, { width, height }: Picture): MarkedPart[] {
  return markKinds.flatMap((kind) =>
    (marks[kind] ?? [])
      .filter((rectangle) => rectangle.still === still + 1)
      .map((r) => ({
        name: usable[kind]?.includes(r) === true ? pointNames[kind] : `${pointNames[kind]}, not used`,
        x: r.x / width,
        y: r.y / height,
        width: r.width / width,
        height: r.height / height,
      })),
  );
}

/** The stills in the order of the report, which shows the first large: those that tell nothing come last. */
function usedFirst({ unused }: MeasuredReel, stills: readonly Still[]) {
  const all = stills.map((still, index) => ({
    ...still,
    index,
    isUsed: unused.every((one) => one.index !== index),
  }));
  return [...all.filter(({ isUsed }) => isUsed), ...all.filter(({ isUsed }) => !isUsed)];
}

/** Densities of stain at the ends of a bar's track: below 0 a film is clearer than was foreseen. */
const stainTrack = { from: -0.2, to: 0.6 } as const;
const alongTrack = (density: number) => (density - stainTrack.from) / (stainTrack.to - stainTrack.from);

function barsOf({ loss, stain, uncertainty }: Measurement): LossBar[] {
  return [
    ...dyeNames.map((dye): LossBar => {
      const [value, deviation] = [loss[dye], uncertainty.loss[dye]];
      const words = lossWords(value, deviation);
      return { name: `${dye} dye`, ink: dye, value, low: value - deviation, high: value + deviation, words };
    }),
    ...lightNames.map((light): LossBar => {
      const [value, deviation] = [stain[light], uncertainty.stain[light]];
      return {
        name: `stain, ${light}`,
        ink: light,
        zero: alongTrack(0),
        value: alongTrack(value),
        low: alongTrack(value - deviation),
        high: alongTrack(value + deviation),
        words: stainWords(value, deviation),
      };
    }),
  ];
}

/**
 * The report of a measured reel as one picture: see preview/reel-report.ts. The stills are shown as recorded and through the
 * correction alone, without what the look adds to it.
 * @param stills those that were measured
 */
export function reportReel(
  reel: MeasuredReel,
  stills: readonly Still[],
  fonts: LabelFonts,
  engine?: ApplyEngine,
): Picture {
  const { measurement, look } = reel;
  const { before, after } = screens(correctionOf(reel));
  const disagreeing = new Set(measurement.disagreeing);
  const { confidence, dyes, flare } = measurement;
  return drawReelReport(
    {
      title: look.name,
      headline: headline(measurement),
      corrected: measurement.leftAsItIs ? 'left as it is' : 'as this measurement corrects it',
      stills: usedFirst(reel, stills).map(({ name, picture, index, isUsed }) => {
        const shown = small(picture);
        const seen = disagreeing.has(name) ? 'speaks against the others' : '';
        return {
          name,
          before: applyLook(before, shown, engine),
          after: applyLook(after, shown, engine),
          marked: markedIn(reel, index, picture),
          remark: isUsed ? seen : 'tells nothing: not used',
        };
      }),
      ...cloudsOf(measurement),
      bars: barsOf(measurement),
      sureness: 'How sure this is',
      sentences: [
        `${surenessWords(confidence)}.`,
        `To expect: ${expectedWords(confidence)}.`,
        ...doubts(measurement),
        `Open gate: ${openGateWords(measurement)}.`,
        ...(flare > 0 ? [`Stray light: ${strayLightWords(flare)}.`] : []),
        `Dyes: ${dyes}.`,
        'Stain is density that the film has gained all over: in blue it yellows the picture.',
        'A bar is what was found; the thin line across its end is how far off it may be (one standard deviation).',
        'The losses are what brings this reel back, with dyes of a usual stock; they are no laboratory figures.',
      ],
    },
    fonts,
  );
}
