import { InputError } from '../errors/input-error.js';
import { type TransferFunctionName, transferFunctions } from '../colour/transfer-functions/index.js';
import { type DyeSetName, dyeSets } from '../film/dye-sets/index.js';
import type { Triple } from '../maths/matrix3.js';
import type { Picture } from '../picture/picture.js';
import { type Confidence, confidenceOf } from './confidence.js';
import { type AmountCloud, amountCloud, densityCloud } from './density-cloud.js';
import { disagreeingStills } from './disagreement.js';
import { type DyeSpace, dyeSpace } from './dye-space.js';
import type { FadingKindName } from './fading-kinds.js';
import { lightBlocks } from './light-blocks.js';
import { type Ageing, type OwnWays, weighLosses } from './losses.js';
import { checkMarks, densitiesOf, type MarkKind, type MarkReading, type Marks, readMarks } from './marks.js';
import { type Anchor, type AxisFit, fitNeutralAxis, type OffsetKnowledge } from './neutral-axis.js';
import { sceneDeviation } from './one-sidedness.js';
import { openGate, type OpenGate } from './open-gate.js';

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
  readonly dyes: DyeSetName;
  /** Effective losses, 0..0.9. */
  readonly loss: CyanMagentaYellow;
  /** Density added to the base. */
  readonly stain: RedGreenBlue;
  /** One standard deviation of each. */
  readonly uncertainty: { readonly loss: CyanMagentaYellow; readonly stain: RedGreenBlue };
  /** Whether the reel is taken to be in good order, so that it is left as it is. */
  readonly goodOrder: boolean;
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

/** Usual densities where the frame cannot tell: of unexposed reversal film, of a grey that somebody marks. */
const usual = {
  black: { tone: 2.65, toneDeviation: 0.2, stray: 0.12 },
  film: { tone: 0.03, toneDeviation: 0.04, stray: 0.03 },
  neutral: { tone: 0.9, toneDeviation: 0.4, stray: 0.06 },
} as const;

/**
 * How far sound films stray from the generic dyes: deviations, of the size that simulated stocks and cameras show; the
 * shared factor is that of the densest black, 2.8 to 3.6 (common practice).
 */
const ownWays = { factor: 0.045, factorShared: 0.08, offset: 0.04, offsetShared: 0.08 } as const;
/** The same once the bare light was seen: only the base is left to guess. */
const ownWaysBeforeLight = { offset: 0.025, offsetShared: 0.03 } as const;

/** Probability of good order from which a reel is left exactly as it is. */
const leaveAloneFrom = 0.8;

interface Reading {
  readonly gate: OpenGate;
  readonly light: readonly Float64Array[];
  readonly marks: Readonly<Record<MarkKind, readonly MarkReading[]>>;
}

interface Candidate {
  readonly dyes: DyeSetName;
  readonly space: DyeSpace;
  readonly clouds: readonly AmountCloud[];
  readonly fit: AxisFit;
  readonly own: OwnWays;
}

function amountsOf(light: Triple, gate: OpenGate, space: DyeSpace): Triple {
  const run = Float64Array.from(densitiesOf(light, gate.level));
  space.toAmounts(run);
  return [run[0], run[1], run[2]];
}

function anchorsOf({ gate, marks }: Reading, space: DyeSpace): Anchor[] {
  return (['black', 'film', 'neutral'] as const).flatMap((kind) =>
    marks[kind].flatMap(({ light }) =>
      light === undefined ? [] : { amounts: amountsOf(light, gate, space), ...usual[kind] },
    ),
  );
}

/** What the bare light tells of the offsets: nothing, its level, or its level and colour. */
function offsetsKnown({ gate }: Reading, space: DyeSpace): OffsetKnowledge {
  if (gate.whiteBalance === undefined)
    return { mean: [0, 0, 0], shared: gate.from === 'given' ? 0.04 : 0.08, own: 0.06 };
  const bare = new Float64Array(3);
  const seen = Float64Array.from(gate.whiteBalance);
  space.toAmounts(bare);
  space.toAmounts(seen);
  return { mean: [seen[0] - bare[0], seen[1] - bare[1], seen[2] - bare[2]], shared: 0.04, own: 0.05 };
}

function ownWaysOf(
  { gate }: Reading,
  { mean }: OffsetKnowledge,
  clouds: readonly AmountCloud[],
  { axis }: AxisFit,
): OwnWays {
  const levelKnown = gate.from === 'given' || gate.from === 'clear mark';
  return {
    ...ownWays,
    scene: sceneDeviation(clouds, axis),
    offsetMean: mean,
    ...(levelKnown ? { offsetShared: ownWaysBeforeLight.offsetShared } : {}),
    ...(gate.whiteBalance === undefined ? {} : { offset: ownWaysBeforeLight.offset }),
  };
}

function tryDyes(dyes: DyeSetName, reading: Reading): Candidate {
  const space = dyeSpace(dyeSets[dyes]);
  const clouds = reading.light.map((light) => amountCloud(densityCloud(light, reading.gate.level), space));
  const knowledge = offsetsKnown(reading, space);
  const fit = fitNeutralAxis(clouds, anchorsOf(reading, space), knowledge);
  return { dyes, space, clouds, fit, own: ownWaysOf(reading, knowledge, clouds, fit) };
}

function read(stills: readonly Still[], options: MeasureOptions): Reading {
  const encoding = transferFunctions[options.encoding];
  const pictures = stills.map(({ picture }) => picture);
  const marks = options.marks ?? {};
  checkMarks(marks, pictures);
  const blocks = pictures.map((picture) =>
    lightBlocks(picture, encoding, { x: 0, y: 0, width: picture.width, height: picture.height }),
  );
  const readings = {
    black: readMarks(marks.black, pictures, encoding),
    clear: readMarks(marks.clear, pictures, encoding),
    film: readMarks(marks.film, pictures, encoding),
    neutral: readMarks(marks.neutral, pictures, encoding),
  };
  const gate = openGate(blocks, readings.clear, encoding, options.openGate);
  return { gate, light: blocks.map(({ light }) => light), marks: readings };
}

const clamp = (value: number, low: number, high: number) => Math.max(low, Math.min(high, value));
const named = ([cyan, magenta, yellow]: Triple): CyanMagentaYellow => ({ cyan, magenta, yellow });
const inLight = ([red, green, blue]: Triple): RedGreenBlue => ({ red, green, blue });
const map = (t: Triple, f: (v: number, k: number) => number): Triple => [f(t[0], 0), f(t[1], 1), f(t[2], 2)];

/** Amounts brought back by the losses and stain, as the look will do. */
const restored = (amounts: Triple, left: Triple, stain: Triple): Triple =>
  map(amounts, (v, k) => (v - stain[k]) / left[k]);

function reportPoints(reading: Reading, space: DyeSpace, left: Triple, stain: Triple): ReportPoint[] {
  return (Object.keys(reading.marks) as MarkKind[]).flatMap((kind) =>
    reading.marks[kind].flatMap(({ light }) => {
      if (light === undefined) return [];
      const before = amountsOf(light, reading.gate, space);
      return { kind, before, after: kind === 'clear' ? before : restored(before, left, stain) };
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
  const reading = read(stills, options);
  const unreadable = stills.filter((_, i) => reading.light[i].length === 0);
  if (unreadable.length > 0)
    throw new InputError(
      unreadable.map(({ name }) => ({
        file: name,
        what: 'every part is burnt out or blocked, so nothing can be measured',
      })),
    );
  const names = options.dyes === 'auto' ? (Object.keys(dyeSets) as DyeSetName[]) : [options.dyes];
  const candidates = names.map((name) => tryDyes(name, reading));
  const best = candidates.reduce((a, b) => (b.fit.score > a.fit.score ? b : a));
  return report(stills, reading, best);
}

function report(
  stills: readonly Still[],
  reading: Reading,
  { dyes, space, clouds, fit, own }: Candidate,
): Measurement {
  const ageing: Ageing = weighLosses(fit, own);
  const goodOrder = ageing.kinds['good-order'] >= leaveAloneFrom;
  const loss = map(ageing.logLeft, (v) => (goodOrder ? 0 : clamp(1 - Math.exp(v), 0, 0.9)));
  const stainAmounts = map(ageing.stain, (v) => (goodOrder ? 0 : v));
  const left = map(loss, (v) => 1 - v);
  const stain = map(space.stainDensities(stainAmounts), (v) => clamp(v, -0.2, 1));
  const { before, weights } = joined(clouds);
  const disagreeing = disagreeingStills(clouds, fit).map((i) => stills[i].name);
  const uncertainty = {
    loss: named(map(ageing.logLeftDeviation, (v, k) => v * left[k])),
    stain: inLight(map(space.stainDensities(ageing.stainDeviation), Math.abs)),
  };
  const { confidence, findings } = confidenceOf({
    stills,
    gate: reading.gate,
    clouds,
    marks: reading.marks,
    fit,
    ageing,
    goodOrder,
    loss,
    uncertainty,
    disagreeing,
  });
  return {
    openGate: reading.gate.level,
    openGateFrom: reading.gate.from,
    dyes,
    loss: named(loss),
    stain: inLight(stain),
    uncertainty,
    goodOrder,
    kinds: ageing.kinds,
    confidence,
    findings,
    disagreeing,
    cloud: {
      before,
      after: before.map((v, i) => (v - stainAmounts[i % 3]) / left[i % 3]),
      weights,
    },
    points: reportPoints(reading, space, left, stainAmounts),
  };
}
