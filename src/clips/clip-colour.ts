import { type MatrixName, matrices } from '../colour/luma-chroma.js';
import type { SignalRange } from '../colour/signal-range.js';
import { InputError } from '../errors/input-error.js';
import type { AskedFormat } from './pixel-formats.js';
import type { StreamFacts } from './stream-facts.js';

/** What overrules a clip's tags. */
export interface ColourChoice {
  readonly matrix?: MatrixName;
  readonly range?: SignalRange;
}

/** How a clip's planes stand for colours. */
export interface ClipColour {
  readonly matrix: MatrixName;
  readonly range: SignalRange;
  /** As the file's tags say, in ffmpeg's names; undefined where they say nothing. */
  readonly primaries: string | undefined;
  readonly transfer: string | undefined;
  /** What was assumed because tags are missing, a clause; undefined where nothing was. */
  readonly assumed: string | undefined;
}

/** Matrices by the names of ITU-T H.273, table 4, as ffprobe writes them. */
const taggedMatrix: Readonly<Record<string, MatrixName>> = {
  bt709: 'bt709',
  bt470bg: 'bt601',
  smpte170m: 'bt601',
  bt2020nc: 'bt2020',
};

const silent = new Set(['unknown', 'unspecified', 'reserved', 'gbr', 'rgb']);

const said = (tag: string | undefined): string | undefined =>
  tag === undefined || silent.has(tag) ? undefined : tag;

/** Lines from which an untagged picture is taken as high definition: common practice, no source. */
const highDefinitionLines = 720;

function matrixOf(
  file: string,
  { color_space, height }: StreamFacts,
): { matrix: MatrixName; assumed: boolean } {
  const tag = said(color_space);
  if (tag === undefined)
    return { matrix: (height ?? 0) >= highDefinitionLines ? 'bt709' : 'bt601', assumed: true };
  if (tag in taggedMatrix) return { matrix: taggedMatrix[tag], assumed: false };
  throw new InputError({
    file,
    what: `its tags name the matrix "${tag}", which is not read here`,
    allowed: Object.values(matrices)
      .map(({ title }) => title)
      .join(', '),
    hint: 'If you know better, say so with --matrix.',
  });
}

function rangeOf(
  { color_range, pix_fmt }: StreamFacts,
  asked: AskedFormat,
): { range: SignalRange; assumed: boolean } {
  const tag = said(color_range);
  if (tag !== undefined) return { range: tag === 'pc' || tag === 'full' ? 'full' : 'legal', assumed: false };
  if (pix_fmt?.startsWith('yuvj') || asked.kind === 'rgb') return { range: 'full', assumed: false };
  return { range: asked.kind === 'grey' ? 'full' : 'legal', assumed: true };
}

/**
 * Matrix and range of a stream, by choice, by its tags, or assumed: BT.709 from 720 lines and BT.601 below, legal range,
 * full for RGB and grey.
 * @throws InputError for a matrix that is not read here
 */
export function colourOf(
  file: string,
  facts: StreamFacts,
  asked: AskedFormat,
  choice: ColourChoice = {},
): ClipColour {
  const coloured = asked.kind === 'luma-chroma';
  const matrix =
    choice.matrix !== undefined
      ? { matrix: choice.matrix, assumed: false }
      : coloured
        ? matrixOf(file, facts)
        : { matrix: 'bt709' as const, assumed: false };
  const range = choice.range !== undefined ? { range: choice.range, assumed: false } : rangeOf(facts, asked);
  const parts = [
    ...(matrix.assumed ? [{ what: 'matrix', as: matrices[matrix.matrix].title, option: '--matrix' }] : []),
    ...(range.assumed ? [{ what: 'range', as: range.range, option: '--range' }] : []),
  ];
  const list = (words: string[]) => words.join(' and ');
  return {
    matrix: matrix.matrix,
    range: range.range,
    primaries: said(facts.color_primaries),
    transfer: said(facts.color_transfer),
    assumed:
      parts.length === 0
        ? undefined
        : `its tags do not say ${list(parts.map(({ what }) => what))}: taken as ${list(parts.map(({ as }) => as))}; ` +
          `${list(parts.map(({ option }) => option))} ${parts.length === 1 ? 'says' : 'say'} otherwise`,
  };
}
