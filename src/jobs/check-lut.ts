import { transmittanceOf } from '../film/density.js';
import type { Stain } from '../film/stain.js';
import { compileLook } from '../look/compile-look.js';
import { filmGreys, randomFilmCodes } from '../look/film-codes.js';
import type { Look } from '../look/look-schema.js';
import { codesOfFilm, openGateOf } from '../look/sections/camera.js';
import { checkLut, type Finding } from '../lut/checks/index.js';
import type { LutFile } from '../lut/formats/lut-format.js';
import type { Lut } from '../lut/lattice.js';
import { seededRandom } from '../maths/random.js';
import { comesBackFinding } from './comes-back.js';
import { signalsIn } from './build-look.js';
import { lutOrigin } from './lut-origin.js';
import { screenSignals, type Signal, signalsOf, type Signals, signalToXyz } from './signal.js';

/** Colours that a table is held against its look with. The seed is fixed: the same file gets the same answer. */
const sampleCount = 20_000;
const sampleSeed = 1964;
/** Greys of the film that are looked at: every code of 12 bits. */
const greySteps = 4096;

const noStain: Stain = { red: 0, green: 0, blue: 0 };

/** The grey code above which film shows nothing: the open gate's, or less where a stain takes light from a channel. */
function lightestGrey(signal: Signal, { red, green, blue }: Stain = noStain): number {
  const density = Math.max(0, red, green, blue);
  return codesOfFilm({ ...signal, openGate: openGateOf(signal) * transmittanceOf(density) }).openGate;
}

/**
 * Asks a table every question that a careful person would before burning it in.
 * The picture ends at the open gate where the signals name one.
 * @param against the look it was made of: its signals count, greys are those of its film, and how far the table is from the exact
 * look is added
 */
export function checkTable(lut: Lut, signals: Signals, against?: Look): Finding[] {
  const { input, output } = against === undefined ? signals : signalsOf(against);
  const greys = against === undefined ? undefined : filmGreys(against, greySteps);
  return checkLut({
    lut,
    range: output.range,
    decodeInput: signalToXyz(input),
    decodeOutput: signalToXyz(output),
    ...(input.openGate === undefined ? {} : { openGate: lightestGrey(input, against?.stock?.stain) }),
    ...(greys === undefined ? {} : { filmGreys: greys }),
    ...(against === undefined
      ? {}
      : {
          exact: compileLook(against),
          samples: randomFilmCodes(against, sampleCount, seededRandom(sampleSeed)),
        }),
  });
}

/** What any table is asked, whatever it is for. */
const ofAnyTable = /^(values-finite|domain|size|lattice-.*)$/;

/**
 * The findings on a way back from a look. It takes what the look gives, and that is not the greys and colours that the checks
 * send through; it spreads what the look had squeezed, beyond both ends too. So all of that is worth a note, and what counts
 * is how much comes back, as its file says.
 */
export function onWayBack(findings: readonly Finding[], file: Pick<LutFile, 'comments'>): Finding[] {
  const comesBack = comesBackFinding(file);
  return [
    ...findings.map((finding): Finding =>
      ofAnyTable.test(finding.name) ? finding : { ...finding, severity: 'note' },
    ),
    ...(comesBack === undefined ? [] : [comesBack]),
  ];
}

/**
 * The findings on a LUT file, its signals taken as it says them: what `gatelight check` answers.
 * @param against the look it was made of, as for {@link checkTable}
 */
export function checkFile(file: LutFile, against?: Look): Finding[] {
  const findings = checkTable(file.lut, signalsIn(file) ?? screenSignals, against);
  return lutOrigin(file).undoes === undefined ? findings : onWayBack(findings, file);
}

/** Whether nothing speaks against loading the table: no fault, whatever the notes say. */
export const isGood = (findings: readonly Finding[]): boolean =>
  findings.every(({ pass, severity }) => pass || severity === 'note');
