import { InputError } from '../errors/input-error.js';
import type { TransferFunctionName } from '../colour/transfer-functions/index.js';
import { type DyeSetName, dyeSets } from '../film/dye-sets/index.js';
import type { Triple } from '../maths/matrix3.js';
import type { Picture } from '../picture/picture.js';
import { type Confidence, confidenceOf } from './confidence.js';
import { type Candidate, weighCandidates } from './candidates.js';
import { chooseCorrection } from './choose-correction.js';
import type { AmountCloud } from './density-cloud.js';
import { disagreeingStills } from './disagreement.js';
import { type Axis, broughtBack } from './film-colours.js';
import type { FadingKindName } from './fading-kinds.js';
import { type Ageings, mixedAgeings } from './losses.js';
import type { MarkKind, Marks } from './marks.js';
import type { OpenGate } from './open-gate.js';
import { amountsOf, type Reading, readStills } from './reading.js';

export interface Still {
  readonly name: string;
  readonly picture: Picture;
}

export interface MeasureOptions {
  /** What the stills were written with; full range, BT.709 primaries. */
  readonly encoding: TransferFunctionName;
  readonly marks?: Marks;
  /** Linear level of the light without film, when it is known. */
  readonly openGate?: number;
  /** A dye set, or `auto`: the one under which the reel's colours look most like film. */
  readonly dyes: DyeSetName | 'auto';
}

export interface CyanMagentaYellow {
  readonly cyan: number;
  readonly magenta: number;
  readonly yellow: number;
}
export interface RedGreenBlue {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** A marked or found point, in equivalent amounts of cyan, magenta, yellow, before and after the correction. */
export interface ReportPoint {
  readonly kind: MarkKind | 'blackest' | 'clearest';
  readonly before: Triple;
  readonly after: Triple;
}

/** What a reel's stills say about its ageing. The numbers are those of a look file's camera and stock sections. */
export interface Measurement {
  readonly openGate: number;
  readonly openGateFrom: OpenGate['from'];
  /** Stray light of the scan that the correction reckons with, a share of the open gate; 0 where nothing is done. */
  readonly flare: number;
  readonly dyes: DyeSetName;
  /** Effective losses, 0..0.9. */
  readonly loss: CyanMagentaYellow;
  /** Density added to the base. */
  readonly stain: RedGreenBlue;
  /** One standard deviation of each. */
  readonly uncertainty: { readonly loss: CyanMagentaYellow; readonly stain: RedGreenBlue };
  /** Whether nothing is to be done: the reel looks in good order, or nothing surely enough wrong. */
  readonly leftAsItIs: boolean;
  /** How probable each way of ageing is. */
  readonly kinds: Readonly<Record<FadingKindName, number>>;
  readonly confidence: Confidence;
  /** What was found, in plain sentences. */
  readonly findings: readonly string[];
  /** Names of stills that speak against the rest. */
  readonly disagreeing: readonly string[];
  /** For the report: equivalent amounts (cyan magenta yellow ...) of the cloud before and after, and known points. */
  readonly cloud: {
    readonly before: Float64Array;
    readonly after: Float64Array;
    readonly weights: Float64Array;
  };
  readonly points: readonly ReportPoint[];
}

const clamp = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));
const named = ([cyan, magenta, yellow]: Triple): CyanMagentaYellow => ({ cyan, magenta, yellow });
const inLight = ([red, green, blue]: Triple): RedGreenBlue => ({ red, green, blue });
const map = (t: Triple, f: (v: number, k: number) => number): Triple => [f(t[0], 0), f(t[1], 1), f(t[2], 2)];

function reportPoints({ marks, gate }: Reading, { space, flare }: Candidate, how: Axis): ReportPoint[] {
  return (Object.keys(marks) as MarkKind[]).flatMap((kind) =>
    marks[kind].flatMap(({ light }) => {
      if (light === undefined) return [];
      const before = amountsOf(light, gate, space, flare);
      return {
        kind,
        before,
        after:
          kind === 'clear' ? before : ([...broughtBack(Float64Array.from(before), how)] as unknown as Triple),
      };
    }),
  );
}

function joined(clouds: readonly AmountCloud[]): { before: Float64Array; weights: Float64Array } {
  return {
    before: Float64Array.from(clouds.flatMap(({ amounts }) => [...amounts])),
    weights: Float64Array.from(clouds.flatMap(({ weights }) => [...weights])),
  };
}

/**
 * Measures what time did to a reel, from stills of it. Nothing need be marked; what is marked makes it surer.
 * @param stills one or more of the same reel, as the camera wrote them
 * @throws InputError without stills, for marks outside them, for a still of which nothing can be read
 */
export function measureReel(stills: readonly Still[], options: MeasureOptions): Measurement {
  if (stills.length === 0)
    throw new InputError({ what: 'there is no still to measure', hint: 'Give one or more.' });
  const reading = readStills(
    stills.map(({ picture }) => picture),
    options,
  );
  const unreadable = stills.filter((_, i) => reading.light[i].length === 0);
  if (unreadable.length > 0)
    throw new InputError(
      unreadable.map(({ name }) => ({
        file: name,
        what: 'every part is burnt out or blocked, so nothing can be measured',
      })),
    );
  const names = options.dyes === 'auto' ? (Object.keys(dyeSets) as DyeSetName[]) : [options.dyes];
  return report(stills, reading, weighCandidates(reading, names));
}

/** Standard deviations of the six numbers over every way of ageing. */
function deviations(ageings: Ageings): number[] {
  const all = Object.values(ageings);
  return [0, 1, 2, 3, 4, 5].map((i) => {
    const mean = all.reduce((sum, a) => sum + a.share * a.mean[i], 0);
    return Math.sqrt(
      all.reduce((sum, a) => sum + a.share * (a.covariance[i][i] + (a.mean[i] - mean) ** 2), 0),
    );
  });
}

const first3 = (values: readonly number[]): Triple => [values[0], values[1], values[2]];

function report(stills: readonly Still[], reading: Reading, candidates: readonly Candidate[]): Measurement {
  const { dyes, flare, space, clouds, fit } = candidates[0];
  const ageings = mixedAgeings(candidates);
  const choice = chooseCorrection(candidates, reading.gate.level);
  const left = first3(choice.logFactors.map(Math.exp));
  const loss = map(left, (v) => 1 - v);
  const stain = map(space.stainDensities(first3(choice.offsets)), (v) => clamp(v, -0.2, 1));
  const leftAsItIs = [...loss, ...stain].every((v) => v === 0);
  const kinds = Object.fromEntries(
    Object.entries(ageings).map(([name, { share }]) => [name, share]),
  ) as Record<FadingKindName, number>;
  const { before, weights } = joined(clouds);
  const disagreeing = disagreeingStills(clouds, fit).map((i) => stills[i].name);
  const open = deviations(ageings);
  const lossDeviation = map(left, (v, k) => v * open[k]);
  const uncertainty = {
    loss: named(lossDeviation),
    stain: inLight(map(space.stainDensities(first3(open.slice(3))), Math.abs)),
  };
  const { confidence, findings } = confidenceOf({
    stills,
    gate: reading.gate,
    clouds,
    scenes: reading.scenes.length,
    marks: reading.marks,
    kinds,
    choice,
    leftAsItIs,
    loss,
    lossDeviation,
    disagreeing,
  });
  return {
    openGate: reading.gate.level,
    openGateFrom: reading.gate.from,
    flare: leftAsItIs ? 0 : flare,
    dyes,
    loss: named(loss),
    stain: inLight(stain),
    uncertainty,
    leftAsItIs,
    kinds,
    confidence,
    findings,
    disagreeing,
    cloud: {
      before,
      after: broughtBack(before, choice),
      weights,
    },
    points: reportPoints(reading, candidates[0], choice),
  };
}
