import { probeClip } from '../../../clips/probe.js';
import type { Tools } from '../../../clips/tools.js';
import { matrices } from '../../../colour/luma-chroma.js';
import { InputError } from '../../../errors/input-error.js';
import type { FrameCoding } from '../../../picture/planar-codec.js';

/**
 * What players will take otherwise than it was written, since not every container and encoder keeps what tags say: clauses,
 * none where all is well.
 */
export async function misreadIn(
  path: string,
  { layout, matrix, range }: FrameCoding,
  tools: Tools,
): Promise<string[]> {
  const written = await probeClip(path, {}, tools).catch((error: unknown) => {
    // Of a kind that is written but not read here.
    if (error instanceof InputError) return undefined;
    throw error;
  });
  if (written === undefined) return [];
  const { colour, asked, pixelFormat } = written;
  // What goes into these is made full range on the way, and they say so.
  const alwaysFull = pixelFormat.startsWith('yuvj');
  const says = (what: string, taken: string, is: string) =>
    `players will take its ${what} as ${taken}, and it is ${is}: this container or encoder cannot say so; .mkv with ffv1 can`;
  return [
    ...(colour.range === range || alwaysFull ? [] : [says('range', colour.range, range)]),
    ...(layout.kind === 'rgb' || asked.kind === 'rgb' || colour.matrix === matrix
      ? []
      : [says('matrix', matrices[colour.matrix].title, matrices[matrix].title)]),
  ];
}
