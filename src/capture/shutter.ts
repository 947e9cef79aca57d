/** The projector as the camera sees it: a light chopped by a turning shutter. */
export interface Chopper {
  /** Frames a second at which the projector runs. */
  readonly filmFps: number;
  /** Blades of its shutter, all alike: one covers the pull-down, the others only raise the flicker's frequency. */
  readonly blades: number;
  /** Share of the time in which light passes, 0..1. */
  readonly openShare: number;
}

/** Half of the time, as in many three-blade machines (common practice, no source). */
export const usualOpenShare = 0.5;

/** Flicker frequency in Hz: blades x film frames a second. */
export function flickerHz({ filmFps, blades }: Chopper): number {
  return blades * filmFps;
}

/**
 * Exposure times that see the same light in every video frame, whatever the phase: whole multiples of the flicker's
 * period that fit into the camera's frame time. Empty when even one period is longer than a video frame.
 * @returns seconds, shortest first
 */
export function flickerFreeExposuresS(chopper: Chopper, cameraFps: number): number[] {
  const period = 1 / flickerHz(chopper);
  const most = Math.floor(1 / cameraFps / period + 1e-9);
  return Array.from({ length: most }, (_, i) => (i + 1) * period);
}

/** Shutter angle in degrees: 360 x exposure x frame rate. Above 360 there is no such exposure. */
export function shutterAngle(exposureS: number, cameraFps: number): number {
  return 360 * exposureS * cameraFps;
}

/** What a shutter speed leaves of the flicker. */
export interface Flicker {
  /** (max - min) / (max + min) of the light over all phases, 0..1: percent flicker over 100 (IEEE Std 1789-2015). */
  readonly modulation: number;
  /** The same as log2(max / min); infinite when some phases see no light at all. */
  readonly stops: number;
}

/**
 * Flicker left by an exposure time under a square-wave light. Of `n + r` periods (n whole, 0 <= r < 1) the n always
 * give n times the open share; the rest catches at least max(0, r - dark) and at most min(r, open) of a period.
 */
export function flickerLeft(chopper: Chopper, exposureS: number): Flicker {
  const open = chopper.openShare;
  const periods = exposureS * flickerHz(chopper);
  const nearest = Math.round(periods);
  // A time such as 1/54 s is no exact binary number: take it for the whole multiple that it means.
  const meant = Math.abs(periods - nearest) < 1e-9 * nearest ? nearest : periods;
  const whole = Math.floor(meant);
  const rest = meant - whole;
  const least = whole * open + Math.max(0, rest - (1 - open));
  const most = whole * open + Math.min(rest, open);
  return { modulation: (most - least) / (most + least), stops: Math.log2(most / least) };
}

/**
 * Frequency at which left-over flicker shows in the recording: the distance from the flicker frequency to the nearest
 * multiple of the camera's frame rate. 0 = the level stands still, at whatever the phase happens to be.
 */
export function beatHz(chopper: Chopper, cameraFps: number): number {
  const flicker = flickerHz(chopper);
  return Math.abs(flicker - cameraFps * Math.round(flicker / cameraFps));
}

export interface OfferedSpeed extends Flicker {
  /** Exposure in seconds. */
  readonly exposureS: number;
  /** Periods of the flicker that it spans. */
  readonly periods: number;
}

/** The offered speed nearest (in stops) to a flicker-free time, and what it leaves. @param offeredS not empty */
export function nearestOffered(chopper: Chopper, wantedS: number, offeredS: readonly number[]): OfferedSpeed {
  const away = (exposureS: number) => Math.abs(Math.log(exposureS / wantedS));
  const exposureS = offeredS.reduce((best, next) => (away(next) < away(best) ? next : best));
  return { exposureS, periods: exposureS * flickerHz(chopper), ...flickerLeft(chopper, exposureS) };
}

export interface SpeedTrim {
  /** Projector speed at which the flicker is a whole multiple of the camera's frame rate. */
  readonly filmFps: number;
  /** Change of the projector's speed, -0.074 = 7.4 % slower. */
  readonly change: number;
  /** The flicker-free exposure at that speed, seconds. */
  readonly exposureS: number;
}

/** The nearest projector speed that stands still against the camera: blades x speed = a whole multiple of its rate. */
export function speedTrim(chopper: Chopper, cameraFps: number): SpeedTrim {
  const multiple = Math.max(1, Math.round(flickerHz(chopper) / cameraFps));
  const filmFps = (multiple * cameraFps) / chopper.blades;
  return { filmFps, change: filmFps / chopper.filmFps - 1, exposureS: 1 / (multiple * cameraFps) };
}
