import type { Cadence } from './cadence.js';
import { cadence } from './cadence.js';
import { cautionsFor } from './cautions.js';
import { gauges, metresPerFoot } from './gauge.js';
import type { CaptureRequest } from './request.js';
import { checkRequest } from './request.js';
import type { SpeedChange } from './running-time.js';
import { feetOfMetres, framesOnFeet, runningTimeS, speedChange } from './running-time.js';
import type { Chopper, OfferedSpeed, SpeedTrim } from './shutter.js';
import {
  beatHz,
  flickerFreeExposuresS,
  flickerHz,
  nearestOffered,
  shutterAngle,
  speedTrim,
  usualOpenShare,
} from './shutter.js';
import type { StorageNeed, VideoFormat } from './storage.js';
import { plannedMbitS, storageNeed } from './storage.js';

export interface FlickerFreeExposure {
  /** Seconds. */
  readonly exposureS: number;
  /** Degrees of a 360 degree shutter at the camera's frame rate. */
  readonly angle: number;
  /** The nearest speed that the camera offers. */
  readonly nearest: OfferedSpeed;
}

/** One speed of the projector: what the camera sees of it. */
export interface SpeedPlan {
  readonly filmFps: number;
  readonly flickerHz: number;
  readonly beatHz: number;
  /** Shortest first; empty when one flicker period is longer than a video frame. */
  readonly exposures: readonly FlickerFreeExposure[];
  /** At the shortest flicker-free exposure. */
  readonly cadence: Cadence;
  readonly seconds: number;
  /** Against the speed at which the film was shot. */
  readonly speed: SpeedChange;
}

/** Everything the arithmetic says about one reel, before it runs. Seconds, Hz, degrees, GB = 10^9 bytes. */
export interface CaptureSheet {
  readonly film: {
    readonly gauge: string;
    readonly feet: number;
    readonly metres: number;
    readonly frames: number;
  };
  readonly projector: Chopper;
  readonly shotFps: number;
  readonly cameraFps: number;
  /** The projector as it runs. */
  readonly asItRuns: SpeedPlan;
  /** The projector trimmed until its flicker stands still against the camera; absent when that is out of its reach. */
  readonly trimmed?: SpeedTrim & SpeedPlan;
  readonly video: VideoFormat & { readonly mbitS: number; readonly mbitSIsPlanned: boolean };
  /** For the longer of the two running times. */
  readonly storage: StorageNeed;
  /** The frame's projected picture, laid into the video frame as large as it goes. */
  readonly framing: { readonly width: number; readonly height: number; readonly pixelsPerMm: number };
  readonly cautions: readonly string[];
}

/** Shutter speeds that many cameras offer, x of 1/x s (common practice, no source). */
const usualOffered = [24, 25, 30, 40, 48, 50, 60, 80, 96, 100, 120, 125, 160, 200, 250];

/** A projector's speed control reaches about so far (common practice, no source). */
const reachOfTrim = 0.15;

interface Shoot {
  readonly frames: number;
  readonly shotFps: number;
  readonly cameraFps: number;
  readonly offeredS: readonly number[];
}

function planOf(chopper: Chopper, { frames, shotFps, cameraFps, offeredS }: Shoot): SpeedPlan {
  const exposures = flickerFreeExposuresS(chopper, cameraFps).map((exposureS) => ({
    exposureS,
    angle: shutterAngle(exposureS, cameraFps),
    nearest: nearestOffered(chopper, exposureS, offeredS),
  }));
  return {
    filmFps: chopper.filmFps,
    flickerHz: flickerHz(chopper),
    beatHz: beatHz(chopper, cameraFps),
    exposures,
    cadence: cadence(chopper, cameraFps, exposures[0]?.exposureS ?? 1 / cameraFps),
    seconds: runningTimeS(frames, chopper.filmFps),
    speed: speedChange(shotFps, chopper.filmFps),
  };
}

function trimmedPlan(projector: Chopper, shoot: Shoot): CaptureSheet['trimmed'] {
  const trim = speedTrim(projector, shoot.cameraFps);
  if (Math.abs(trim.change) > reachOfTrim) return undefined;
  return { ...trim, ...planOf({ ...projector, filmFps: trim.filmFps }, shoot) };
}

function framingOf(
  [widthMm, heightMm]: readonly [number, number],
  video: VideoFormat,
): CaptureSheet['framing'] {
  const pixelsPerMm = Math.min(video.width / widthMm, video.height / heightMm);
  return {
    width: Math.round(widthMm * pixelsPerMm),
    height: Math.round(heightMm * pixelsPerMm),
    pixelsPerMm,
  };
}

/**
 * The capture sheet of one reel.
 * @throws InputError naming every field that cannot be used
 */
export function captureSheet(request: CaptureRequest): CaptureSheet {
  checkRequest(request);
  const gauge = gauges[request.gauge];
  const feet = request.feet ?? feetOfMetres(request.metres!);
  const frames = framesOnFeet(gauge, feet);
  const projector: Chopper = {
    filmFps: request.filmFps,
    blades: request.blades,
    openShare: request.openShare ?? usualOpenShare,
  };
  const shotFps = request.shotFps ?? request.filmFps;
  const cameraFps = request.cameraFps;
  const shoot = { frames, shotFps, cameraFps, offeredS: (request.offered ?? usualOffered).map((x) => 1 / x) };
  const asItRuns = planOf(projector, shoot);
  const trimmed = trimmedPlan(projector, shoot);
  const format: VideoFormat = {
    width: request.width ?? 3840,
    height: request.height ?? 2160,
    bits: request.bits ?? 10,
    sampling: request.sampling ?? '4:2:2',
    fps: cameraFps,
  };
  const mbitS = request.mbitS ?? plannedMbitS(format);
  const sheet = {
    film: { gauge: gauge.title, feet, metres: feet * metresPerFoot, frames },
    projector,
    shotFps,
    cameraFps,
    asItRuns,
    ...(trimmed === undefined ? {} : { trimmed }),
    video: { ...format, mbitS, mbitSIsPlanned: request.mbitS === undefined },
    storage: storageNeed(Math.max(asItRuns.seconds, trimmed?.seconds ?? 0), mbitS, request.freeBytes),
    framing: framingOf(gauge.pictureMm, format),
  };
  return { ...sheet, cautions: cautionsFor(sheet) };
}
