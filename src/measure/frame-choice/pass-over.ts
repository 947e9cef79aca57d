import { percentile } from '../../maths/percentile.js';
import { frameDifference, type FrameTraits } from './traits.js';

/** A frame that may be chosen. */
export interface FrameSample {
  /** Number of the frame in the clip. */
  readonly index: number;
  readonly traits: FrameTraits;
  /** How different it is from the frames beside it; 0 where there is none. */
  readonly fromBefore: number;
  readonly fromAfter: number;
}

/** Why a frame is passed over, in the words of a list: `3 black`. */
export const passOverReasons = {
  black: 'black',
  white: 'white',
  leader: 'leader',
  burnt: 'burnt out',
  torn: 'at a splice, cut or jump',
  blurred: 'blurred',
} as const;

export type PassOverReason = keyof typeof passOverReasons;

/** Limits that hold for any reel. Shares and levels are of FrameTraits. */
const limits = {
  blackBelow: 0.1,
  whiteAbove: 0.8,
  /** Leader is of one colour by more than this; a picture with a wide sky stays below. */
  plain: 0.7,
  /** Burnt out more than the reel's clearest frames: holes and edges are in all of them. */
  burntMore: 0.06,
  darkBar: 0.02,
  /** A frame next to one of another scene differs by more than this, and by so many times the reel's usual step. */
  step: 0.035,
  stepTimes: 5,
  /** Share of the sharpness of the sharper frames that look alike, and how far those may differ. */
  sharpness: 0.5,
  alike: 0.08,
} as const;

/** What is usual in the reel that the frames are from. */
interface Usual {
  readonly step: number;
  readonly burnt: number;
  readonly pictures: readonly FrameSample[];
}

/** Reasons that a frame's own picture gives. */
function emptyReason({ low, high, plain }: FrameTraits): PassOverReason | undefined {
  if (high < limits.blackBelow) return 'black';
  if (low > limits.whiteAbove) return 'white';
  return plain > limits.plain ? 'leader' : undefined;
}

function reasonFor({ traits, fromBefore, fromAfter }: FrameSample, usual: Usual): PassOverReason | undefined {
  const { darkBar, burnt } = traits;
  const step = Math.max(limits.step, limits.stepTimes * usual.step);
  if (darkBar > limits.darkBar || Math.max(fromBefore, fromAfter) > step) return 'torn';
  if (burnt > usual.burnt + limits.burntMore) return 'burnt';
  return isBlurred(traits, usual.pictures) ? 'blurred' : undefined;
}

/** A scene may have less detail than another: sharpness is that of frames which look alike. */
function isBlurred(own: FrameTraits, pictures: readonly FrameSample[]): boolean {
  const alike = pictures.filter(({ traits }) => frameDifference(traits, own) < limits.alike);
  return own.sharpness.some((value, way) => {
    const usual = share(
      alike.map(({ traits }) => traits.sharpness[way]),
      0.75,
    );
    return value < limits.sharpness * usual;
  });
}

const share = (values: readonly number[], of: number) =>
  values.length === 0 ? 0 : percentile(Float64Array.from(values), of);

export interface SortedSamples {
  readonly good: readonly FrameSample[];
  /** How many were passed over, by reason. */
  readonly passedOver: Readonly<Partial<Record<PassOverReason, number>>>;
}

/** Sets aside leader, and frames that are burnt out, torn by a splice or frame jump, or blurred, as the reel itself goes. */
export function passOver(samples: readonly FrameSample[]): SortedSamples {
  const passedOver: Partial<Record<PassOverReason, number>> = {};
  const keep = (reason: PassOverReason | undefined) => {
    if (reason !== undefined) passedOver[reason] = (passedOver[reason] ?? 0) + 1;
    return reason === undefined;
  };
  const pictures = samples.filter(({ traits }) => keep(emptyReason(traits)));
  const of = (value: (sample: FrameSample) => number) => pictures.map(value);
  const usual = {
    step: share(
      of(({ fromBefore }) => fromBefore),
      0.5,
    ),
    burnt: share(
      of(({ traits }) => traits.burnt),
      0.1,
    ),
    pictures,
  };
  return { good: pictures.filter((sample) => keep(reasonFor(sample, usual))), passedOver };
}
