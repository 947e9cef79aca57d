import { rangeScale } from '../colour/signal-range.js';
import type { Triple } from '../maths/matrix3.js';
import type { Box } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { commonEnd } from './common-end.js';
import { adviceFor, type Advice, isBurntOut } from './exposure-advice.js';
import { exposureSteps } from './exposure-steps.js';
import { fieldCells } from './gate-field.js';
import { flatShadows, shadowNoise } from './shadow-noise.js';
import { channelEnds, cropStill, type LitStill, litStill, type StillSignal } from './still-light.js';

export interface TestStill {
  readonly name: string;
  readonly picture: Picture;
}

/** One still of the test. Triples are red, green, blue. */
export interface StillExposure {
  readonly name: string;
  readonly burntOutPercent: Triple;
  readonly blockedPercent: Triple;
  /** Exposure against the first still, stops; undefined where the two share no well exposed part. */
  readonly exposureStops?: number;
  /**
   * Stops from the brightest parts of the frame to the end of the scale. Negative: so far over, told from a still that
   * is not; undefined when there is none, and for a still without light.
   */
  readonly headroomStops?: number;
  /** Deviation in flat shadows as a per cent of the light there; undefined where shadows are blocked, burnt out or nowhere flat. */
  readonly shadowNoisePercent?: Triple;
}

export interface ExposureTest {
  /** In the order given. */
  readonly stills: readonly StillExposure[];
  /** Index of the still to take, also where it is only the best of bad ones; the first where they are not of one frame. */
  readonly take: number;
  readonly advice: Advice;
  /** Greatest difference between channels in how far one still is brighter than the next, stops: the light's colour changed. */
  readonly colourChangeStops: number;
  /** Whether the stills look like one frame. */
  readonly sameFrame: boolean;
  /** Where the channels were found to end, as a share of the scale, when that was not given and lies below its end. */
  readonly ceilingFound?: number;
}

interface Ends {
  readonly burntOutPercent: Triple;
  readonly blockedPercent: Triple;
  readonly headroomStops: number;
}

function endsOf(still: LitStill): Ends {
  const [r, g, b] = channelEnds(still);
  return {
    burntOutPercent: [r.burntOutPercent, g.burntOutPercent, b.burntOutPercent],
    blockedPercent: [r.blockedPercent, g.blockedPercent, b.blockedPercent],
    headroomStops: Math.min(r.headroomStops, g.headroomStops, b.headroomStops),
  };
}

/** Headroom of each still: its own, or, where it is burnt out, that of the brightest one that is not, less the exposure between. */
function headrooms(ends: readonly Ends[], stops: readonly (number | undefined)[]): (number | undefined)[] {
  const whole = ends.flatMap((end, i) => (!isBurntOut(end) && stops[i] !== undefined ? [i] : []));
  const reference = whole.sort((a, b) => stops[b]! - stops[a]!)[0];
  return ends.map((end, i) => {
    if (!isBurntOut(end)) return Number.isFinite(end.headroomStops) ? end.headroomStops : undefined;
    const own = stops[i];
    if (reference === undefined || own === undefined) return undefined;
    return Math.min(0, ends[reference].headroomStops - (own - stops[reference]!));
  });
}

/** Stills as light, and where their channels were found to end. */
function litStills(stills: readonly TestStill[], signal: StillSignal, area: Box | undefined) {
  const pictures = stills.map(({ picture }) => picture);
  const found = signal.ceiling === undefined ? commonEnd(pictures) : undefined;
  const ceilingFound =
    found !== undefined && found < rangeScale[signal.range].white - 1 / 255 ? found : undefined;
  const lit = pictures.map((picture) => {
    const still = litStill(
      picture,
      ceilingFound === undefined ? signal : { ...signal, ceiling: ceilingFound },
    );
    return area === undefined ? still : cropStill(still, area);
  });
  return { lit, ceilingFound };
}

const wholeOf = ({ picture: { width, height } }: LitStill): Box => ({ x: 0, y: 0, width, height });

/**
 * Compares stills of one frame taken at several sensitivities or lamp levels.
 * @param stills all of one size, code values as the camera wrote them
 * @param area the part that shows the film's picture, within the stills; all of it when left out
 * @throws RangeError for no stills or stills of several sizes
 */
export function testExposure(stills: readonly TestStill[], signal: StillSignal, area?: Box): ExposureTest {
  const sizes = new Set(stills.map(({ picture: { width, height } }) => `${width} x ${height}`));
  if (sizes.size !== 1) throw new RangeError('an exposure test needs stills of one size');
  const { lit, ceilingFound } = litStills(stills, signal, area);
  const steps = exposureSteps(
    lit.map((still) => fieldCells(still, wholeOf(still))),
    lit[0].fullLight,
  );
  const places = flatShadows(lit[steps.brightest]);
  const ends = lit.map(endsOf);
  const rooms = headrooms(ends, steps.againstFirst);
  const found = stills.map(({ name }, i): StillExposure => ({
    ...ends[i],
    name,
    exposureStops: steps.againstFirst[i],
    headroomStops: rooms[i],
    shadowNoisePercent: shadowNoise(lit[i], places),
  }));
  const { colourChangeStops, sameFrame } = steps;
  const advice = sameFrame ? adviceFor(found) : ({ take: 0, advice: 'not-one-frame' } as const);
  return { stills: found, ...advice, colourChangeStops, sameFrame, ceilingFound };
}
