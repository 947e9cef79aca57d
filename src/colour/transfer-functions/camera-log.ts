import { InputError, type Problem } from '../../errors/input-error.js';
import { bounded, type TransferFunction } from './transfer-function.js';

/**
 * The parameters of a camera's log curve, named and defaulted as in the Log node of the Common LUT Format
 * (SMPTE ST 2136-1:2024, Academy S-2014-006):
 * signal = logSideSlope log_base(linSideSlope light + linSideOffset) + logSideOffset,
 * and at and below linSideBreak a straight line that meets it.
 */
export interface CameraLogParameters {
  /** Above 0 and not 1; 2 unless given. */
  readonly base?: number;
  /** 1 unless given. */
  readonly logSideSlope?: number;
  /** 0 unless given. */
  readonly logSideOffset?: number;
  /** 1 unless given. */
  readonly linSideSlope?: number;
  /** 0 unless given. */
  readonly linSideOffset?: number;
  /** Light below which the curve is a line. Without it the curve is log all the way down. */
  readonly linSideBreak?: number;
  /** Slope of that line; the slope of the log curve at the break unless given. */
  readonly linearSlope?: number;
}

type Complete = Required<Omit<CameraLogParameters, 'linSideBreak' | 'linearSlope'>> & CameraLogParameters;

const defaults = { base: 2, logSideSlope: 1, logSideOffset: 0, linSideSlope: 1, linSideOffset: 0 };

/**
 * Where a curve without a break turns straight: 24 stops below a log argument of 1, deeper than the lowest code of any
 * recording. Black and negative light then stay finite.
 */
const deepestArgument = 2 ** -24;

function problemsOf(given: CameraLogParameters, p: Complete): Problem[] {
  const problems: Problem[] = [];
  const refuse = (field: string, what: string, allowed: string) => problems.push({ field, what, allowed });
  for (const [field, value] of Object.entries(given))
    if (value !== undefined && !Number.isFinite(value))
      refuse(field, `${value} is not a number`, 'a finite number');
  if (problems.length > 0) return problems;
  if (p.base <= 0 || p.base === 1)
    refuse('base', `${p.base} is no base of a logarithm`, 'above 0, but not 1');
  else if (!(Math.log(p.base) * p.logSideSlope * p.linSideSlope > 0))
    refuse('logSideSlope', 'the curve does not rise with light', 'slopes that make signal rise with light');
  if (p.linSideBreak !== undefined && !(p.linSideSlope * p.linSideBreak + p.linSideOffset > 0))
    refuse('linSideBreak', 'the logarithm does not reach down to the break', 'a higher break');
  if (p.linearSlope !== undefined && p.linSideBreak === undefined)
    refuse('linearSlope', 'a line without a break has no use', 'linSideBreak beside it');
  if (p.linearSlope !== undefined && !(p.linearSlope > 0))
    refuse('linearSlope', `${p.linearSlope} does not rise with light`, 'above 0');
  return problems;
}

/**
 * A log encoding from its published parameters. The line below the break, or below the deepest argument when there is
 * no break, keeps it finite and invertible for every light.
 * @throws InputError for parameters without a rising curve; fields are named as above
 */
export function cameraLog(
  parameters: CameraLogParameters,
  { title = 'camera log', source = "the camera's published curve" }: { title?: string; source?: string } = {},
): TransferFunction {
  const given = Object.fromEntries(Object.entries(parameters).filter(([, value]) => value !== undefined));
  const p: Complete = { ...defaults, ...given };
  const problems = problemsOf(parameters, p);
  if (problems.length > 0) throw new InputError(problems);

  const perLog = p.logSideSlope / Math.log(p.base);
  const breakLight = p.linSideBreak ?? (deepestArgument - p.linSideOffset) / p.linSideSlope;
  const breakArgument =
    p.linSideBreak === undefined ? deepestArgument : p.linSideSlope * breakLight + p.linSideOffset;
  const breakSignal = perLog * Math.log(breakArgument) + p.logSideOffset;
  const linearSlope = p.linearSlope ?? (perLog * p.linSideSlope) / breakArgument;
  return {
    title,
    source,
    whiteLight: 1,
    decode: (signal) =>
      bounded(
        signal <= breakSignal
          ? breakLight + (signal - breakSignal) / linearSlope
          : (Math.exp((signal - p.logSideOffset) / perLog) - p.linSideOffset) / p.linSideSlope,
      ),
    encode: (light) => {
      const x = bounded(light);
      return x <= breakLight
        ? breakSignal + linearSlope * (x - breakLight)
        : perLog * Math.log(p.linSideSlope * x + p.linSideOffset) + p.logSideOffset;
    },
  };
}
