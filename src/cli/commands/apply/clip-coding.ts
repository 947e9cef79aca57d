import type { ProbedClip } from '../../../clips/probe.js';
import type { ColourTags } from '../../../clips/write-clip.js';
import type { MatrixName } from '../../../colour/luma-chroma.js';
import type { Signal } from '../../../jobs/signal.js';
import type { FrameCoding } from '../../../picture/planar-codec.js';

/** Names of ITU-T H.273 (tables 2 and 3), as ffmpeg writes them, of what a look may deliver. */
const primariesTags: Readonly<Record<string, string>> = {
  bt709: 'bt709',
  bt2020: 'bt2020',
  'p3-d65': 'smpte432',
};
const transferTags: Readonly<Record<string, string>> = {
  linear: 'linear',
  srgb: 'iec61966-2-1',
  bt709: 'bt709',
  // BT.1886 is how displays show what BT.709 tags.
  bt1886: 'bt709',
  'gamma-2.2': 'gamma22',
  hlg: 'arib-std-b67',
  pq: 'smpte2084',
};

const named = (tags: Readonly<Record<string, string>>, choice: unknown) =>
  typeof choice === 'string' ? tags[choice] : undefined;

/** Wide primaries ask for their own matrix; the others keep the clip's, unless that was the wide one. */
function matrixFor({ colour }: ProbedClip, { primaries }: Signal): MatrixName {
  if (primaries === 'bt2020') return 'bt2020';
  return colour.matrix === 'bt2020' ? 'bt709' : colour.matrix;
}

const matrixTags = { bt601: 'smpte170m', bt709: 'bt709', bt2020: 'bt2020nc' } as const satisfies Record<
  MatrixName,
  string
>;

/** How the frames that come out lie and what they stand for. */
export interface ClipDelivery {
  readonly coding: FrameCoding;
  /** Pixel format, as ffmpeg calls it. */
  readonly format: string;
  readonly tags: ColourTags;
  /** What the file cannot say, a clause. */
  readonly unsaid: string | undefined;
}

/** A look needs finer steps than 8 bits: what is written without loss has at least so many. */
const leastBits = 10;

/**
 * The planes that a look's colours are written in: as they came, but grey becomes colour, and where `lossless` no depth
 * is less than ten bits.
 */
export function deliveryFor(clip: ProbedClip, output: Signal, lossless: boolean): ClipDelivery {
  const { layout, colour } = clip;
  const rgb = layout.kind === 'rgb';
  const bits = lossless ? Math.max(leastBits, layout.bits) : layout.bits;
  const matrix = matrixFor(clip, output);
  const coding: FrameCoding = {
    layout: { ...layout, bits, kind: rgb ? 'rgb' : 'luma-chroma' },
    matrix,
    range: colour.range,
  };
  const { across, down } = layout;
  const pattern = rgb ? 'gbrp' : `yuv${across === 1 ? '444' : down === 1 ? '422' : '420'}p`;
  const primaries = named(primariesTags, output.primaries);
  const transfer = named(transferTags, output.encoding);
  const unsaid = [
    ...(primaries === undefined ? ['primaries'] : []),
    ...(transfer === undefined ? ['transfer function'] : []),
  ];
  return {
    coding,
    format: `${pattern}${bits > 8 ? `${bits}le` : ''}`,
    tags: { primaries, transfer, matrix: rgb ? 'gbr' : matrixTags[matrix], range: colour.range },
    unsaid:
      unsaid.length === 0
        ? undefined
        : `no standard tag says the look’s ${unsaid.join(' and ')}: the file leaves ${unsaid.length === 1 ? 'it' : 'them'} unsaid`,
  };
}
