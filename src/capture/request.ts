import type { Problem } from '../errors/input-error.js';
import { InputError } from '../errors/input-error.js';
import { unknownName } from '../errors/unknown-name.js';
import type { GaugeName } from './gauge.js';
import { gauges } from './gauge.js';
import type { Sampling } from './storage.js';
import { samplesPerPixel } from './storage.js';

/** What a shoot is planned from. */
export interface CaptureRequest {
  readonly gauge: GaugeName;
  /** Length of the reel: feet or metres, one of the two. */
  readonly feet?: number;
  readonly metres?: number;
  /** Speed of the projector, frames a second. */
  readonly filmFps: number;
  /** Speed at which the film was shot; the projector's when not given. */
  readonly shotFps?: number;
  /** Blades of the projector's shutter. */
  readonly blades: number;
  /** Share of the time in which light passes. */
  readonly openShare?: number;
  /** Frames a second of the recording. */
  readonly cameraFps: number;
  /** Shutter speeds the camera offers, as the x of 1/x s. */
  readonly offered?: readonly number[];
  readonly width?: number;
  readonly height?: number;
  readonly bits?: number;
  readonly sampling?: Sampling;
  /** Data rate of the recording, Mbit/s; a planning figure when not given. */
  readonly mbitS?: number;
  /** Free space of the target disk, bytes. */
  readonly freeBytes?: number;
}

interface Limits {
  readonly least: number;
  readonly most: number;
  readonly whole?: boolean;
}

const limits = {
  feet: { least: 0.1, most: 20000 },
  metres: { least: 0.1, most: 6000 },
  filmFps: { least: 1, most: 100 },
  shotFps: { least: 1, most: 500 },
  blades: { least: 1, most: 6, whole: true },
  openShare: { least: 0.05, most: 1 },
  cameraFps: { least: 1, most: 480 },
  width: { least: 16, most: 32768, whole: true },
  height: { least: 16, most: 32768, whole: true },
  bits: { least: 8, most: 16, whole: true },
  mbitS: { least: 0.1, most: 200000 },
  freeBytes: { least: 0, most: 1e18 },
} as const satisfies Partial<Record<keyof CaptureRequest, Limits>>;

function outside(value: number, { least, most, whole }: Limits): boolean {
  return !(value >= least && value <= most) || (whole === true && !Number.isInteger(value));
}

function numberProblems(request: CaptureRequest): Problem[] {
  return (Object.keys(limits) as (keyof typeof limits)[]).flatMap((field) => {
    const value = request[field];
    const bounds: Limits = limits[field];
    if (value === undefined || !outside(value, bounds)) return [];
    const kind = bounds.whole === true ? 'a whole number' : 'a number';
    return [
      { field, what: `${value} cannot be used`, allowed: `${kind} from ${bounds.least} to ${bounds.most}` },
    ];
  });
}

function nameProblem(field: string, given: string, names: readonly string[]): Problem[] {
  return names.includes(given) ? [] : [unknownName(field, given, names)];
}

function lengthProblem({ feet, metres }: CaptureRequest): Problem[] {
  if ((feet === undefined) !== (metres === undefined)) return [];
  return [
    {
      field: 'feet',
      what: 'the length of the reel is needed once',
      allowed: 'feet or metres, one of the two',
    },
  ];
}

function offeredProblem(offered: readonly number[] | undefined): Problem[] {
  const good = offered === undefined || (offered.length > 0 && offered.every((x) => x >= 1 && x <= 100000));
  if (good) return [];
  return [
    {
      field: 'offered',
      what: 'the shutter speeds cannot be used',
      allowed: 'numbers x of 1/x s, 1 to 100000',
    },
  ];
}

/** @throws InputError naming every field that cannot be used */
export function checkRequest(request: CaptureRequest): void {
  const problems = [
    ...nameProblem('gauge', request.gauge, Object.keys(gauges)),
    ...(request.sampling === undefined
      ? []
      : nameProblem('sampling', request.sampling, Object.keys(samplesPerPixel))),
    ...lengthProblem(request),
    ...numberProblems(request),
    ...offeredProblem(request.offered),
  ];
  if (problems.length > 0) throw new InputError(problems);
}
