import type { Ffmpeg } from './rivals/ffmpeg.js';
import type { OpenColorIO } from './rivals/opencolorio.js';
import type { Figure } from './figures.js';

/** What every part of the bench is given. */
export interface Setting {
  /** One quick look: fewer rounds, less work in each. */
  readonly quick: boolean;
  readonly rounds: number;
  /** An empty folder, in memory where the machine has one there. */
  readonly folder: string;
  readonly ffmpeg: Ffmpeg;
  /** Undefined where it is not installed. */
  readonly openColorIO: OpenColorIO | undefined;
}

/** A part of the bench. */
export interface Part {
  readonly title: string;
  measure(setting: Setting): Promise<Figure[]>;
}
