import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import { normalRandom, seededRandom } from '../../../src/maths/random.js';
import { type Film, filmFrames, height, width } from './film.js';
import { type Exposure, exposures, lightOf, type Projector, truePercentFlicker } from './shutter-light.js';

export interface Shot {
  readonly projector: Projector;
  readonly film: Film;
  readonly cameraFps: number;
  readonly exposureS: number;
  readonly seconds: number;
  /** Noise of a pixel at white, as a share of white; it falls with the root of the light. */
  readonly noise: number;
  /** Deviation of the camera's exposure from frame to frame. */
  readonly exposureNoise: number;
}

/** What is known of a simulated recording. */
export interface Truth {
  readonly filmFps: number;
  readonly percentFlicker: number;
  readonly duplicated: number;
  readonly blended: number;
}

/** A frame counts as blended when the lesser film frame gives more of its light than this. */
const blendShare = 0.1;

export function truthOf({ projector, cameraFps, exposureS, seconds }: Shot): Truth & { all: Exposure[] } {
  const all = exposures(projector, { fps: cameraFps, exposureS, frames: Math.round(seconds * cameraFps) });
  const seen = all.map((exposure) => {
    const light = lightOf(exposure);
    return exposure.shares
      .map((share, i) => ({ frame: exposure.firstFilmFrame + i, share: share / light }))
      .filter(({ share }) => share > blendShare)
      .map(({ frame }) => frame);
  });
  const same = (a: number[], b: number[]) => a.length === 1 && b.length === 1 && a[0] === b[0];
  return {
    all,
    filmFps: projector.filmFps,
    percentFlicker: truePercentFlicker(all),
    duplicated: seen.filter((frames, n) => n > 0 && same(frames, seen[n - 1])).length,
    blended: seen.filter((frames) => frames.length > 1).length,
  };
}

const { encode, decode } = transferFunctions.srgb;
const eightBits = Float64Array.from({ length: 256 }, (_, code) => decode(code / 255));

/** The recording, frame by frame: summed, noisy, written in 8 bits of sRGB and read back as light. */
export function* record(shot: Shot): Generator<{ width: number; height: number; light: Float32Array }> {
  const film = filmFrames(shot.film);
  const random = seededRandom(shot.film.seed + 5);
  for (const { firstFilmFrame, shares } of truthOf(shot).all) {
    const light = new Float32Array(width * height);
    shares.forEach((share, i) => {
      const frame = film(firstFilmFrame + i);
      for (let p = 0; p < light.length; p++) light[p] += share * frame[p];
    });
    const gain = 1 + shot.exposureNoise * normalRandom(random);
    for (let p = 0; p < light.length; p++) {
      const exact = 0.9 * gain * light[p];
      const noisy = exact + shot.noise * Math.sqrt(exact + 0.001) * normalRandom(random);
      light[p] = eightBits[Math.round(255 * Math.min(1, Math.max(0, encode(Math.max(0, noisy)))))];
    }
    yield { width, height, light };
  }
}
