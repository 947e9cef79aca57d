import { seededRandom } from '../../../src/maths/random.js';
import type { Film } from './film.js';
import type { Shot } from './record.js';

/** One recording, and what the person who took it would say of it. */
export interface Case {
  readonly name: string;
  readonly shot: Shot;
  readonly nominalFps: number;
}

const speeds = [18, 50 / 3, 24];
const bladeCounts = [2, 3, 5];
const cameras = [24, 25, 30, 50];
const kinds: readonly Film['kind'][] = ['leader', 'street', 'pan'];

/** The exposure nearest to half a frame that is free of flicker, off by a share; what fits into the frame at all. */
function exposureNear(flickerHz: number, cameraFps: number, off: number): number {
  const longest = 0.98 / cameraFps;
  const whole = Math.max(1, Math.round(flickerHz / (2 * cameraFps)));
  return Math.min(longest, ((1 + off) * whole) / flickerHz);
}

/** Every speed, number of blades and camera once; all that is not fixed by that is drawn from the seed. */
export function cases(seed: number): Case[] {
  const random = seededRandom(seed);
  const between = (a: number, b: number) => a + (b - a) * random();
  const pick = <T>(values: readonly T[]) => values[Math.floor(random() * values.length)];
  return speeds.flatMap((nominalFps) =>
    bladeCounts.flatMap((blades) =>
      cameras.map((cameraFps): Case => {
        const filmFps = nominalFps * (1 + between(-0.02, 0.02));
        const off = between(0.01, 0.1) * pick([-1, 1]);
        const kind = pick(kinds);
        const exposureS = exposureNear(blades * filmFps, cameraFps, off);
        return {
          name: `${nominalFps.toFixed(2)} x ${blades} at ${cameraFps}, ${kind}`,
          nominalFps,
          shot: {
            projector: {
              filmFps,
              blades,
              openShare: between(0.45, 0.6),
              edge: between(0.08, 0.25),
              swing: pick([0, 0.0005, 0.001]),
              phase: random(),
            },
            film: {
              kind,
              seed: Math.floor(1e6 * random()),
              framesAScene: kind === 'leader' ? 0 : Math.round(between(60, 200)),
              weave: between(0.1, 0.4),
              uneven: pick([0, 0.002, 0.005]),
              grain: between(0.01, 0.04),
            },
            cameraFps,
            exposureS,
            seconds: between(10, 30),
            noise: between(0.005, 0.02),
            exposureNoise: pick([0, 0.001, 0.003]),
          },
        };
      }),
    ),
  );
}
