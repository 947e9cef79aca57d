import { measureSpeed, type SpeedReport } from '../../../src/capture/speed/measure-speed.js';
import { readSeries } from '../../../src/capture/speed/series.js';
import type { Case } from './cases.js';
import { record, type Truth, truthOf } from './record.js';

/** Targets of `capture speed` on simulated recordings: the speed within 0.5 %, the flicker within 10 % of itself. */
export const targets = { speed: 0.005, flicker: 0.1 } as const;

/** What was found in a recording, beside what was simulated. */
export interface Judged {
  readonly truth: Truth;
  readonly report: SpeedReport;
  /** How far the speed found is off, as a share; undefined where none was found. */
  readonly speedOff: number | undefined;
  /** Whether the speed is among those named, where two look alike and it is said that they do. */
  readonly amongOthers: boolean;
  /** How far the flicker is off, as a share of itself, and what was told of its error, as a share too. */
  readonly flickerOff: number;
  readonly flickerError: number;
}

export async function judge({ shot, nominalFps }: Case): Promise<Judged> {
  const { projector, cameraFps, exposureS } = shot;
  const series = await readSeries(record(shot));
  const report = measureSpeed(series, { nominalFps, blades: projector.blades, cameraFps, exposureS });
  const truth = truthOf(shot);
  const { speed, flicker, confidence } = report;
  const off = (fps: number) => fps / truth.filmFps - 1;
  return {
    ...{ truth, report },
    speedOff: speed === undefined ? undefined : off(speed.filmFps),
    amongOthers:
      confidence === 'open' && (speed?.others ?? []).some((fps) => Math.abs(off(fps)) < targets.speed),
    flickerOff: flicker.percent / truth.percentFlicker - 1,
    flickerError: flicker.error / flicker.percent,
  };
}

export const speedIsRight = ({ speedOff }: Judged): boolean =>
  speedOff !== undefined && Math.abs(speedOff) < targets.speed;
export const flickerIsRight = ({ flickerOff }: Judged): boolean => Math.abs(flickerOff) < targets.flicker;
