import { ciede2000Run, labRun } from '../../../src/colour/difference.js';
import { signalsOf, signalToXyz } from '../../../src/jobs/signal.js';
import { compileLook } from '../../../src/look/compile-look.js';
import { randomFilmCodes } from '../../../src/look/film-codes.js';
import type { Look } from '../../../src/look/look-schema.js';
import { sampleLut } from '../../../src/lut/interpolate.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { percentile } from '../../../src/maths/percentile.js';
import { seededRandom } from '../../../src/maths/random.js';
import type { Figure } from '../figures.js';
import { loadReadyLook, lookFiles } from '../project.js';
import type { Part } from '../setting.js';

const size = 33;
const colours = 20_000;

/** CIEDE2000 of table against exact look, over random code values in the film's gamut. */
function differences(look: Look): Float64Array {
  const exact = compileLook(look);
  const codes = randomFilmCodes(look, colours, seededRandom(20));
  const count = codes.length / 3;
  const [through, direct] = [codes.slice(), codes.slice()];
  sampleLut(sampleLattice(exact, size))(through, count);
  exact(direct, count);
  const toXyz = signalToXyz(signalsOf(look).output);
  for (const run of [through, direct]) {
    toXyz(run, count);
    labRun(run, count, [0.95047, 1, 1.08883]);
  }
  const found = new Float64Array(count);
  ciede2000Run(through, direct, count, found);
  return found;
}

function figuresOf(file: string): Figure[] {
  const found = differences(loadReadyLook(file));
  const mean = found.reduce((sum, value) => sum + value, 0) / found.length;
  const name = file.replace(/\.json$/, '');
  return [
    { what: `${name}: mean`, ours: mean, unit: 'dE00', most: 0.15 },
    { what: `${name}: 99 %`, ours: percentile(found, 0.99), unit: 'dE00', most: 0.6 },
  ];
}

export const coloursPart: Part = {
  title: `Colours: a table of ${size} points beside the look it was made of, CIEDE2000`,
  measure: async () => lookFiles.flatMap(figuresOf),
};
