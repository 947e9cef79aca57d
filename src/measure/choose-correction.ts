import { ciede2000Run, labRun } from '../colour/difference.js';
import { primaries } from '../colour/primaries/index.js';
import { rgbToRgb, rgbToXyz, whiteOf } from '../colour/primaries/rgb-matrix.js';
import { densityLight } from '../film/density-light.js';
import { gateLight } from '../film/stock.js';
import { multiply3, transformRun3 } from '../maths/matrix3.js';
import type { Candidate } from './candidates.js';
import type { AmountCloud } from './density-cloud.js';
import { asRecorded, type Axis, broughtBack } from './film-colours.js';
import { correctionOf, type Sample, samplesOf } from './samples.js';

/** A correction, and what is to be expected of it over everything that the reel may have gone through. */
export interface Choice extends Axis {
  /** Mean CIEDE2000 to the sound reel that is expected with it, and with nothing done. */
  readonly expected: number;
  readonly withoutExpected: number;
}

/** Colours of all stills that corrections are compared by. */
const paletteSize = 72;
/** Most of a still's blocks that may newly be burnt out or blocked. */
const newlyCutAtMost = 0.004;
/** How far a correction is carried out. */
const degrees = [0.25, 0.5, 0.7, 0.85, 1];
/** Expected gain in CIEDE2000 from which a correction is worth doing: half of what an eye sees. */
const worthDoing = 0.5;
/** Linear light on the camera's scale beyond which a channel is at an end: half a code of 8 bits in sRGB. */
const [blockedTo, burntFrom] = [1.5e-4, 0.995];

const toBt2020 = densityLight(gateLight).toBt2020;
const toXyz = multiply3(rgbToXyz(primaries.bt2020), toBt2020);
const toScreen = multiply3(rgbToRgb(primaries.bt2020, primaries.bt709), toBt2020);
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

/** What a correction leads to, on the camera's scale: its light in the primaries of densities, flare back in. */
function lightAfter(amounts: Float64Array, correction: Axis, of: Candidate, level: number): Float64Array {
  const light = broughtBack(amounts, correction);
  of.space.toLight(light);
  return light.map((v) => level * (v + of.flare));
}

function labAfter(palette: Float64Array, correction: Axis, of: Candidate, level: number): Float64Array {
  const values = lightAfter(palette, correction, of, level);
  transformRun3(toXyz, values, values.length / 3);
  labRun(values, values.length / 3, white);
  return values;
}

/** Mean amount up to which a colour is light without film, in a perforation: no picture is lost there. */
const bareUpTo = 0.04;

/** Which colours of a still have a channel at an end. */
function cutBy(correction: Axis, amounts: Float64Array, of: Candidate, level: number): boolean[] {
  const values = lightAfter(amounts, correction, of, level);
  transformRun3(toScreen, values, values.length / 3);
  return Array.from({ length: values.length / 3 }, (_, i) =>
    values.subarray(3 * i, 3 * i + 3).some((v) => v <= blockedTo || v >= burntFrom),
  );
}

/** Whether a correction keeps the ends of every still. */
function keepsEnds(correction: Axis, of: Candidate, level: number): boolean {
  return of.clouds.every(({ amounts, shares }) => {
    const before = cutBy(asRecorded, amounts, of, level);
    const after = cutBy(correction, amounts, of, level);
    const bare = (i: number) => amounts[3 * i] + amounts[3 * i + 1] + amounts[3 * i + 2] < 3 * bareUpTo;
    const newlyCut = shares.filter((_, i) => after[i] && !before[i] && !bare(i));
    return newlyCut.reduce((a, b) => a + b, 0) <= newlyCutAtMost;
  });
}

function meanOf(samples: readonly Sample[]): Axis {
  const six = [0, 1, 2, 3, 4, 5].map((i) =>
    samples.reduce(
      (sum, { correction, probability }) =>
        sum + probability * (i < 3 ? correction.logFactors[i] : correction.offsets[i - 3]),
      0,
    ),
  );
  return correctionOf(six);
}

/**
 * The correction that is expected to come closest to the sound reel, as an eye sees it (least mean CIEDE2000 over the
 * stills' colours and over all that the reel may have gone through): the mean of what is known, each likely way of
 * ageing by itself, or these carried out in part or not at all. Where the evidence is thin, doing little costs least.
 * @param level linear level of the open gate
 */
export function chooseCorrection(of: Candidate, level: number): Choice {
  const samples = samplesOf(of.ageings);
  const palette = paletteOf(of.clouds);
  const count = palette.length / 3;
  const seen = samples.map(({ correction }) => labAfter(palette, correction, of, level));
  const differences = new Float64Array(count);
  const expectedOf = (correction: Axis): number => {
    const lab = labAfter(palette, correction, of, level);
    return samples.reduce((sum, { probability }, n) => {
      ciede2000Run(lab, seen[n], count, differences);
      return sum + (probability * differences.reduce((a, b) => a + b, 0)) / count;
    }, 0);
  };
  const ways = [meanOf(samples), ...Object.values(of.ageings).map(({ mean }) => correctionOf(mean))];
  const withoutExpected = expectedOf(asRecorded);
  const choices = ways
    .flatMap((way) => degrees.map((degree) => partly(degree, way)))
    .map((correction) => ({ correction, expected: expectedOf(correction) }))
    .filter(({ expected }) => expected < withoutExpected - worthDoing)
    .sort((a, b) => a.expected - b.expected);
  const best = choices.find(({ correction }) => keepsEnds(correction, of, level));
  return {
    ...(best?.correction ?? asRecorded),
    expected: best?.expected ?? withoutExpected,
    withoutExpected,
  };
}
