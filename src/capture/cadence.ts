// The shoot: its arithmetic before the reel runs, and what stills and a test recording of it tell. Knows frames, seconds,
// bytes and linear light; knows nothing of looks, files, or devices by name.

import type { Chopper } from './shutter.js';
import { flickerHz } from './shutter.js';

/** How film frames fall on video frames. Shares are averages over all phases between projector and camera. */
export interface Cadence {
  /** Film frames that last exactly as long as `videoFrames`; absent when no short pattern repeats. */
  readonly pattern?: { readonly filmFrames: number; readonly videoFrames: number };
  /** Share of the video frames that show the very same one film frame as the frame before. */
  readonly duplicated: number;
  /** Share of the video frames in which light of two film frames mixes. */
  readonly blended: number;
  /** Share of the film frames that no video frame sees. */
  readonly lost: number;
}

/** Patterns longer than this are no help to anyone. */
const longestPattern = 60;

function repeatingPattern(filmFps: number, cameraFps: number): Cadence['pattern'] {
  for (let videoFrames = 1; videoFrames <= longestPattern; videoFrames++) {
    const filmFrames = (videoFrames * filmFps) / cameraFps;
    const whole = Math.round(filmFrames);
    if (whole > 0 && Math.abs(filmFrames - whole) < 1e-6) return { filmFrames: whole, videoFrames };
  }
  return undefined;
}

/**
 * The film is pulled down behind one blade, in the dark, for (1 - open share) of a flicker period. A video frame mixes
 * two film frames when its exposure reaches over that whole dark stretch; a film frame is lost when all its light falls
 * between two exposures.
 * @param exposureS the camera's exposure time, at most 1 / cameraFps
 */
export function cadence(chopper: Chopper, cameraFps: number, exposureS: number): Cadence {
  const { filmFps, openShare } = chopper;
  const darkS = (1 - openShare) / flickerHz(chopper);
  const litS = 1 / filmFps - darkS;
  const between = 1 / cameraFps - exposureS;
  // Starts of the exposures that see one film frame alone lie within so many film frames; the next starts a step later.
  const alone = 1 - Math.abs(exposureS - darkS) * filmFps;
  const pattern = repeatingPattern(filmFps, cameraFps);
  return {
    ...(pattern === undefined ? {} : { pattern }),
    duplicated: Math.max(0, alone - filmFps / cameraFps),
    blended: Math.min(1, Math.max(0, exposureS - darkS) * filmFps),
    lost: Math.max(0, between - litS) * cameraFps,
  };
}
