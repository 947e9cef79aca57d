import { compileLook } from '../look/compile-look.js';
import { randomFilmCodes } from '../look/film-codes.js';
import type { Look } from '../look/look-schema.js';
import { codesOfFilm } from '../look/sections/camera.js';
import { checkLut, type Finding } from '../lut/checks/index.js';
import type { Lut } from '../lut/lattice.js';
import { seededRandom } from '../maths/random.js';
import { signalsOf, type Signals, signalToXyz } from './signal.js';

/** Colours that a table is held against its look with. The seed is fixed: the same file gets the same answer. */
const sampleCount = 20_000;
const sampleSeed = 1964;

/**
 * Asks a table every question that a careful person would before burning it in.
 * The picture ends at the open gate where the signals name one.
 * @param against the look it was made of: its signals count, and how far the table is from the exact look is added
 */
export function checkTable(lut: Lut, signals: Signals, against?: Look): Finding[] {
  const { input, output } = against === undefined ? signals : signalsOf(against);
  return checkLut({
    lut,
    range: output.range,
    decodeInput: signalToXyz(input),
    decodeOutput: signalToXyz(output),
    ...(input.openGate === undefined ? {} : { openGate: codesOfFilm(input).openGate }),
    ...(against === undefined
      ? {}
      : {
          exact: compileLook(against),
          samples: randomFilmCodes(against, sampleCount, seededRandom(sampleSeed)),
        }),
  });
}

const endNames = /^(output-range$|highlights-|shadows-)/;

/**
 * The findings on a way back from a look. It spreads what the look had squeezed, and beyond both ends at codes that the look
 * never gives: there that is as it must be, and worth a note.
 */
export const onWayBack = (findings: readonly Finding[]): Finding[] =>
  findings.map((finding) => (endNames.test(finding.name) ? { ...finding, severity: 'note' } : finding));

/** Whether nothing speaks against loading the table: no fault, whatever the notes say. */
export const isGood = (findings: readonly Finding[]): boolean =>
  findings.every(({ pass, severity }) => pass || severity === 'note');
