import type { ProbedClip } from '../../../clips/probe.js';
import type { ColourTags } from '../../../clips/write-clip.js';
import { matrices, type MatrixName } from '../../../colour/luma-chroma.js';
import type { Signal } from '../../../jobs/signal.js';
import type { FrameCoding } from '../../../picture/planar-codec.js';
import { tagsOf } from '../../colour-tags.js';

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
  /** What the user should know, each a clause. */
  readonly notes: readonly string[];
}

/** What is known of the encoder. */
export interface EncoderTraits {
  /** Whether it loses nothing. */
  readonly lossless: boolean;
  /** Whether it takes red, green and blue; of interest for a clip of those only. */
  readonly rgb: boolean;
}

/** A look needs finer steps than 8 bits: what is written without loss has at least so many. */
const leastBits = 10;

/**
 * The planes that a look's colours are written in: as they came, but grey becomes colour, RGB becomes luma and colour
 * differences of legal range for an encoder that does not take it, and what is lossless has ten bits or more.
 */
function codingFor({ layout, colour }: ProbedClip, matrix: MatrixName, encoder: EncoderTraits): FrameCoding {
  const kind = layout.kind === 'rgb' && encoder.rgb ? 'rgb' : 'luma-chroma';
  const bits = encoder.lossless ? Math.max(leastBits, layout.bits) : layout.bits;
  const range = layout.kind === 'rgb' && kind !== 'rgb' ? 'legal' : colour.range;
  return { layout: { ...layout, bits, kind }, matrix, range };
}

function formatOf({ layout: { kind, bits, across, down } }: FrameCoding): string {
  const pattern = kind === 'rgb' ? 'gbrp' : `yuv${across === 1 ? '444' : down === 1 ? '422' : '420'}p`;
  return `${pattern}${bits > 8 ? `${bits}le` : ''}`;
}

export function deliveryFor(clip: ProbedClip, output: Signal, encoder: EncoderTraits): ClipDelivery {
  const matrix = matrixFor(clip, output);
  const coding = codingFor(clip, matrix, encoder);
  const rgb = coding.layout.kind === 'rgb';
  const { primaries, transfer } = tagsOf(output);
  const unsaid = [
    ...(primaries === undefined ? ['primaries'] : []),
    ...(transfer === undefined ? ['transfer function'] : []),
  ];
  return {
    coding,
    format: formatOf(coding),
    tags: { primaries, transfer, matrix: rgb ? 'rgb' : matrixTags[matrix], range: coding.range },
    notes: [
      ...(clip.layout.kind === 'rgb' && !rgb
        ? [`its encoder takes no RGB: written as ${matrices[matrix].title} 4:4:4, legal range`]
        : []),
      ...(unsaid.length === 0
        ? []
        : [
            `no standard tag says the look’s ${unsaid.join(' and ')}: the file leaves ${unsaid.length === 1 ? 'it' : 'them'} unsaid`,
          ]),
    ],
  };
}
