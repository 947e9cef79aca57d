import { type Chopper, flickerFreeExposuresS, shutterAngle, speedTrim, type SpeedTrim } from '../shutter.js';

export interface FreeExposure {
  readonly exposureS: number;
  /** Degrees at the camera's frame rate. */
  readonly angle: number;
}

/** What ends the flicker. */
export interface Remedy {
  /** The projector's speed at which the light stands still against the camera; absent when no trim reaches it. */
  readonly trim?: SpeedTrim;
  /** Exposures that see no flicker at the speed that was found, shortest first; none when a pulse outlasts a frame. */
  readonly exposures: readonly FreeExposure[];
  /** The one nearest to the exposure in use, when that is known. */
  readonly nearest?: FreeExposure;
}

/** A projector's speed control reaches about so far (common practice, no source). */
const reachOfTrim = 0.15;

/** The trim and the exposures that end the flicker of a projector under a camera. */
export function remedyFor(chopper: Chopper, cameraFps: number, exposureS?: number): Remedy {
  const trim = speedTrim(chopper, cameraFps);
  const exposures = flickerFreeExposuresS(chopper, cameraFps).map((free) => ({
    exposureS: free,
    angle: shutterAngle(free, cameraFps),
  }));
  const nearest =
    exposureS === undefined || exposures.length === 0
      ? undefined
      : exposures.reduce((a, b) => (away(b, exposureS) < away(a, exposureS) ? b : a));
  return {
    ...(Math.abs(trim.change) <= reachOfTrim ? { trim } : {}),
    exposures,
    ...(nearest === undefined ? {} : { nearest }),
  };
}

const away = ({ exposureS }: FreeExposure, wanted: number) => Math.abs(Math.log(exposureS / wanted));
