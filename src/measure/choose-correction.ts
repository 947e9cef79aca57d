import { ciede2000Run, labRun } from '../colour/difference.js';
import { primaries } from '../colour/primaries/index.js';
import { rgbToXyz, whiteOf } from '../colour/primaries/rgb-matrix.js';
import { densityLight } from '../film/density-light.js';
import { densityOf } from '../film/density.js';
import { gateLight } from '../film/stock.js';
import { multiply3, transformRun3 } from '../maths/matrix3.js';
import type { Candidate } from './candidates.js';
import type { AmountCloud } from './density-cloud.js';
import { asRecorded, type Axis, broughtBack } from './film-colours.js';
import { type Ageings, mixedAgeings } from './losses.js';
import { minimise, type Sloped } from './minimise.js';
import { correctionOf, leastShare, type Sample, samplesOf } from './samples.js';

/** A correction, and what is to be expected of it over everything that the reel may have gone through. */
export interface Choice extends Axis {
  /** Mean CIEDE2000 to the sound reel that is expected with it, and with nothing done. */
  readonly expected: number;
  readonly withoutExpected: number;
}

/** Colours of all stills that corrections are compared by. */
const paletteSize = 72;
/** How far a correction is carried out. */
const degrees = [1, 0.85, 0.7, 0.5, 0.25];
/**
 * Expected gain from which a correction is worth doing: what an eye just sees, in CIEDE2000, and a share of what is
 * expected to be wrong. Less is a gamble, and a sound reel spoilt costs more trust than a fading left.
 */
const [worthDoing, worthShare] = [1, 0.25];

const toBt2020 = densityLight(gateLight).toBt2020;
const toXyz = multiply3(rgbToXyz(primaries.bt2020), toBt2020);
const white = whiteOf(primaries.bt2020);

/** Colours at equal steps through the blocks of each still, so that large areas count by their size. */
function paletteOf(clouds: readonly AmountCloud[]): Float64Array {
  const each = Math.ceil(paletteSize / clouds.length);
  return Float64Array.from(
    clouds.flatMap(({ amounts, shares }) => {
      const colours: number[] = [];
      let passed = 0;
      shares.forEach((share, i) => {
        passed += share;
        while (colours.length / 3 + 0.5 < passed * each)
          colours.push(amounts[3 * i], amounts[3 * i + 1], amounts[3 * i + 2]);
      });
      return colours;
    }),
  );
}

const partly = (degree: number, { logFactors, offsets }: Axis): Axis =>
  correctionOf([...logFactors, ...offsets].map((v) => degree * v));

/** Light over the open gate, in the primaries of densities, of a candidate's colours. */
function lightOf(amounts: Float64Array, { space, flare }: Candidate): Float64Array {
  const light = amounts.slice();
  space.toLight(light);
  return light.map((v) => v + flare);
}

/** Amounts of a light, a candidate's flare taken off. */
function amountsIn(light: Float64Array, { space, flare }: Candidate): Float64Array {
  const amounts = light.map((v) => densityOf(v - flare));
  space.toAmounts(amounts);
  return amounts;
}

/** Light over the open gate after a correction. */
function lightAfter(amounts: Float64Array, correction: Axis, { space, flare }: Candidate): Float64Array {
  const light = broughtBack(amounts, correction);
  space.toLight(light);
  return light.map((v) => v + flare);
}

function labOf(light: Float64Array, level: number): Float64Array {
  const values = light.map((v) => level * v);
  transformRun3(toXyz, values, values.length / 3);
  labRun(values, values.length / 3, white);
  return values;
}

/** A look that the reel may have had when it was sound, and how probable it is. */
interface Sound {
  readonly lab: Float64Array;
  readonly probability: number;
}

/** Everything that the reel may have looked like: samples of all candidates, each in its own dyes and flare. */
function soundLooks(candidates: readonly Candidate[], palette: Float64Array, level: number): Sound[] {
  return candidates.flatMap((candidate) => {
    const amounts = amountsIn(palette, candidate);
    return samplesOf(candidate.ageings).map(({ correction, probability }: Sample) => ({
      lab: labOf(lightAfter(amounts, correction, candidate), level),
      probability: candidate.share * probability,
    }));
  });
}

/** Mean CIEDE2000 that is expected of a look at the palette. */
function expectedOf(lab: Float64Array, sound: readonly Sound[]): number {
  const differences = new Float64Array(lab.length / 3);
  return sound.reduce((sum, { lab: other, probability }) => {
    ciede2000Run(lab, other, differences.length, differences);
    return sum + (probability * differences.reduce((a, b) => a + b, 0)) / differences.length;
  }, 0);
}

const sixOf = ({ logFactors, offsets }: Axis): number[] => [...logFactors, ...offsets];

/** Mean over all ways of ageing. */
function meanOf(ageings: Ageings): number[] {
  const all = Object.values(ageings);
  return all[0].mean.map((_, i) => all.reduce((sum, { share, mean }) => sum + share * mean[i], 0));
}

/** Step of the differences that the slopes of an expectation are taken from. */
const slopeStep = 1e-3;

/** The best correction near a start: a minimum of what is expected. */
function refined(start: Axis, expectation: (correction: Axis) => number): Axis {
  const sloped: Sloped = (x, slopes) => {
    const value = expectation(correctionOf(x));
    x.forEach((_, i) => {
      const beside = x.map((v, j) => (i === j ? v + slopeStep : v));
      slopes[i] = (expectation(correctionOf(beside)) - value) / slopeStep;
    });
    return value;
  };
  return correctionOf(minimise(sloped, sixOf(start), { most: 12, enough: 0.01, reach: 0.03 }).at);
}

/**
 * The correction that is expected to come closest to the sound reel, as an eye sees it (least mean CIEDE2000 over the
 * stills' colours and over all that the reel may have gone through), sought from the means of what is known; carried
 * out in part, or not at all. Where the evidence is thin, doing little costs least.
 * @param candidates the likeliest first: its dyes and flare are those of the correction
 * @param level linear level of the open gate
 */
export function chooseCorrection(candidates: readonly Candidate[], level: number): Choice {
  const [of] = candidates;
  const ageings = mixedAgeings(candidates);
  const palette = lightOf(paletteOf(of.clouds), of);
  const sound = soundLooks(candidates, palette, level);
  const amounts = amountsIn(palette, of);
  const expectation = (correction: Axis) =>
    expectedOf(labOf(lightAfter(amounts, correction, of), level), sound);
  const likely = Object.values(ageings).filter(({ share }) => share >= leastShare);
  const ways = [meanOf(ageings), ...likely.map(({ mean }) => mean)].map(correctionOf);
  const rated = (correction: Axis) => ({ correction, expected: expectation(correction) });
  const withoutExpected = expectation(asRecorded);
  const first = ways.flatMap((way) => degrees.map((degree) => rated(partly(degree, way))));
  const start = first.reduce((a, b) => (b.expected < a.expected ? b : a));
  const enough = Math.max(worthDoing, worthShare * withoutExpected);
  const closest = rated(refined(start.correction, expectation));
  const best = closest.expected < withoutExpected - enough ? closest : undefined;
  return {
    ...(best?.correction ?? asRecorded),
    expected: best?.expected ?? withoutExpected,
    withoutExpected,
  };
}
