import type { Still } from '../stills/read-still.js';

/**
 * Opens what stands for a still on the command line.
 * @param name a picture file as the user named it
 * @throws InputError naming the file and what to do
 */
export async function openStill(name: string): Promise<Still> {
  // Loaded when first needed: commands that read no still start faster without a picture decoder.
  const { readStill } = await import('../stills/read-still.js');
  return readStill(name);
}
