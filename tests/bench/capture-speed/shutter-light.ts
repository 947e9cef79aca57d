/** A projector as it is simulated. */
export interface Projector {
  /** True speed, film frames a second. */
  readonly filmFps: number;
  readonly blades: number;
  /** Share of the time in which light passes. */
  readonly openShare: number;
  /** Time that a blade's edge takes to cross the picture, as a share of a pulse: the light rises and falls so long. */
  readonly edge: number;
  /** The speed swings by this share of itself, once in `swingSeconds`. */
  readonly swing?: number;
  readonly swingSeconds?: number;
  /** Film frames that have passed when the camera starts. */
  readonly phase: number;
}

/** Slices of one pulse in which its light is summed. */
const slices = 4096;

/** Light from the middle of the dark stretch on, summed: entry i is the light of the first i slices of a pulse. */
function summedPulse({ openShare, edge }: Projector): Float64Array {
  const sums = new Float64Array(slices + 1);
  for (let i = 0; i < slices; i++) {
    const away = Math.abs((i + 0.5) / slices - 0.5);
    const level = Math.min(1, Math.max(0, (openShare / 2 + edge / 2 - away) / edge));
    sums[i + 1] = sums[i] + level / slices;
  }
  return sums;
}

/** What one exposure sees: the light of each film frame it reaches, 1 = the mean of all phases. */
export interface Exposure {
  readonly firstFilmFrame: number;
  readonly shares: readonly number[];
}

/** The camera's exposures under a projector: the shutter's light curve summed over each, film frame by film frame. */
export function exposures(
  projector: Projector,
  camera: { readonly fps: number; readonly exposureS: number; readonly frames: number },
): Exposure[] {
  const { filmFps, blades, openShare, swing = 0, swingSeconds = 7, phase } = projector;
  const sums = summedPulse(projector);
  const total = sums[slices];
  const lightTo = (pulses: number) => {
    const whole = Math.floor(pulses);
    const at = (pulses - whole) * slices;
    const i = Math.floor(at);
    return whole * total + sums[i] + (at - i) * (sums[Math.min(slices, i + 1)] - sums[i]);
  };
  const turn = (2 * Math.PI) / swingSeconds;
  const filmTime = (seconds: number) =>
    phase + filmFps * (seconds + (swing / turn) * (1 - Math.cos(turn * seconds)));
  return Array.from({ length: camera.frames }, (_, n) => {
    const from = filmTime(n / camera.fps);
    const to = filmTime(n / camera.fps + camera.exposureS);
    const scale = 1 / (blades * filmFps * camera.exposureS * openShare);
    const firstFilmFrame = Math.floor(from);
    const shares: number[] = [];
    for (let frame = firstFilmFrame; frame < to; frame++)
      shares.push(
        scale * (lightTo(blades * Math.min(to, frame + 1)) - lightTo(blades * Math.max(from, frame))),
      );
    return { firstFilmFrame, shares };
  });
}

export const lightOf = ({ shares }: Exposure): number => shares.reduce((sum, share) => sum + share, 0);

/** (max - min) / (max + min) in per cent over the recording's frames. */
export function truePercentFlicker(all: readonly Exposure[]): number {
  const lights = all.map(lightOf);
  const [most, least] = [Math.max(...lights), Math.min(...lights)];
  return (100 * (most - least)) / (most + least);
}
