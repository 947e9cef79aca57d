import { Option } from 'commander';
import type { StillSignal } from '../capture/still-light.js';
import { frameNamed } from '../clips/clip-name.js';
import { transferFunctions } from '../colour/transfer-functions/index.js';
import { InputError } from '../errors/input-error.js';
import { type Camera, cameraSchema } from '../look/sections/camera.js';
import { type Encoding, transferFunctionOf } from '../look/sections/signal.js';
import { namesOf } from '../look/sections/section.js';
import type { Picture } from '../picture/picture.js';
import { loadLook } from './load.js';
import { openStill } from './open-still.js';
import type { ClipOptions } from './options.js';
import { noteAll } from './report.js';

/** What commands that read stills ask about the camera. */
export interface CameraOptions extends ClipOptions {
  readonly encoding?: Encoding;
  readonly like?: string;
  readonly ceiling?: number;
}

/** Refuses what an option was given, in the words of every other refusal. */
export function refuseOption(option: string, given: string, allowed: string): never {
  const shown = given.length > 60 ? `${given.slice(0, 57)}...` : given;
  throw new InputError({ field: option, what: `"${shown}" cannot be used`, allowed });
}

/** A number within limits, as people write it. */
export function numberOption(option: string, least: number, most: number) {
  return (text: string): number => {
    const value = /^[+-]?\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : NaN;
    return value >= least && value <= most
      ? value
      : refuseOption(option, text, `a number from ${least} to ${most}, with a decimal point`);
  };
}

export const encodingOption = () =>
  new Option(
    '--encoding <name>',
    'transfer function the stills were written with (srgb when neither this nor --like says)',
  ).choices(namesOf(transferFunctions));

export const ceilingOption = (when = '') =>
  new Option(
    '--ceiling <percent>',
    `${when}where the camera’s channels end, per cent of the scale, if below its last code`,
  ).argParser(numberOption('--ceiling', 1, 100));

/** The camera section of `--like`, with `--encoding` over it; the defaults of a look where nothing is said. */
export async function cameraOf({ like, encoding }: CameraOptions): Promise<Camera> {
  const camera = like === undefined ? cameraSchema.parse({}) : (await loadLook(like)).camera;
  return encoding === undefined ? camera : { ...camera, encoding };
}

/** How stills of a camera stand for light. */
export function stillSignalOf({ encoding, range }: Camera, ceilingPercent: number | undefined): StillSignal {
  const { decode } = transferFunctionOf(encoding);
  return { decode, range, ...(ceilingPercent === undefined ? {} : { ceiling: ceilingPercent / 100 }) };
}

/** Reads stills one after the other, telling what their reader has to say, of a movie once. */
export async function loadStills(
  paths: readonly string[],
  choice: ClipOptions = {},
): Promise<{ name: string; picture: Picture }[]> {
  const stills: { name: string; picture: Picture }[] = [];
  const told = new Set<string>();
  for (const path of paths) {
    const { picture, notes } = await openStill(path, choice);
    const file = (await frameNamed(path))?.clip ?? path;
    const unsaid = notes.filter((note) => !told.has(`${file}: ${note}`));
    for (const note of unsaid) told.add(`${file}: ${note}`);
    noteAll(file, unsaid);
    stills.push({ name: path, picture });
  }
  return stills;
}
