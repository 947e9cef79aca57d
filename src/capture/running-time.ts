import type { Gauge } from './gauge.js';
import { metresPerFoot } from './gauge.js';

/** Whole frames on a length of film. @param feet length in feet, 0 or more */
export function framesOnFeet(gauge: Gauge, feet: number): number {
  return Math.round(feet * gauge.framesPerFoot);
}

export function feetOfMetres(metres: number): number {
  return metres / metresPerFoot;
}

/** Running time in seconds. @param fps frames a second, above 0 */
export function runningTimeS(frames: number, fps: number): number {
  return frames / fps;
}

/** Minutes and seconds, rounded to the second: `3:20`, `26:40`, `1:02:05` from an hour on. */
export function clock(seconds: number): string {
  const whole = Math.round(seconds);
  const pad = (value: number) => String(value).padStart(2, '0');
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return hours > 0 ? `${hours}:${pad(minutes)}:${pad(rest)}` : `${minutes}:${pad(rest)}`;
}

/** How a film's movement looks when it is shown at another speed than it was shot. */
export interface SpeedChange {
  /** Shown speed over filmed speed: below 1 is slower than life. */
  readonly factor: number;
  /** Playback speed that puts it right, 1 = as recorded: 18 shown at 16 2/3 needs 1.08. */
  readonly correction: number;
}

/** @param shotFps speed of the film camera @param shownFps speed of the projector while it is recorded */
export function speedChange(shotFps: number, shownFps: number): SpeedChange {
  return { factor: shownFps / shotFps, correction: shotFps / shownFps };
}
