import { frameNamed } from '../clips/clip-name.js';
import type { ColourChoice } from '../clips/clip-colour.js';
import type { ProbedClip } from '../clips/probe.js';
import type { Still } from '../stills/read-still.js';
import { requireStillName } from './kind-of-name.js';

/** Clips that were looked into: several stills of one are often asked for. */
const probed = new Map<string, Promise<ProbedClip>>();

/** Looks into a clip, once. @throws InputError as probeClip of clips/probe.ts */
export async function openClip(path: string, { matrix, range }: ColourChoice = {}): Promise<ProbedClip> {
  const key = JSON.stringify([path, matrix, range]);
  const { probeClip } = await import('../clips/probe.js');
  const clip = probed.get(key) ?? probeClip(path, { matrix, range });
  probed.set(key, clip);
  return clip;
}

/**
 * Opens what stands for a still on the command line: a picture file, or one frame of a movie by time (`reel.mkv@1:20.5`)
 * or by number counted from 0 (`reel.mkv@f2050`), which comes as RGB of 16 bits, full range.
 * @param name as the user gave it
 * @param choice what overrules a movie's tags; pictures have none
 * @throws InputError naming the file and what to do
 */
export async function openStill(name: string, choice: ColourChoice = {}): Promise<Still> {
  requireStillName(name);
  const frame = await frameNamed(name);
  if (frame !== undefined) {
    const { readClipStill } = await import('../clips/read-clip-still.js');
    return readClipStill(await openClip(frame.clip, choice), frame.place);
  }
  // Loaded when first needed: commands that read no still start faster without a picture decoder.
  const { readStill } = await import('../stills/read-still.js');
  return readStill(name);
}
