import type { MarkKind, Marks, Measurement, Rectangle, Still } from '../measure/index.js';
import type { Box } from '../picture/canvas.js';
import { colourChannels, lastCode, type Picture } from '../picture/picture.js';

/** Places of a still that are looked at, about. */
const looks = 20_000;

/** How light some places of a still are, spread evenly over a box: means of the channels' codes, as shares of the last. */
function tonesIn(still: Picture, { x, y, width, height }: Box): Float64Array {
  const { channels, data } = still;
  const colours = colourChannels(still);
  const step = Math.max(1, Math.floor(Math.sqrt((width * height) / looks)));
  const [across, down] = [Math.ceil(width / step), Math.ceil(height / step)];
  return Float64Array.from({ length: across * down }, (_, i) => {
    const row = y + step * Math.floor(i / across);
    const at = (row * still.width + x + step * (i % across)) * channels;
    let sum = 0;
    for (let c = 0; c < colours; c++) sum += data[at + c];
    return sum / colours / lastCode(still.bits);
  });
}

/** Grain, dust and the fall-off of the light make this much, as a share of the scale. */
const margin = 0.04;

/**
 * What cannot be of a mark, by how much of its still would have to be darker, or lighter, than it. Round the film a camera may
 * see the gate's mask, which is darker than any film; lighter than clear film is little, lighter than no film nothing but
 * specks (common practice, no source).
 */
const doubted = {
  black: {
    side: -1,
    most: 0.4,
    words: (share) =>
      `black is lighter than ${share} of its still, and unexposed film is darker than any picture`,
  },
  clear: {
    side: 1,
    most: 0.05,
    words: (share) =>
      `clear is darker than ${share} of its still, and nothing is lighter than the light without film`,
  },
  film: {
    side: 1,
    most: 0.25,
    words: (share) =>
      `clear film is darker than ${share} of its still, and no picture is lighter than clear film`,
  },
} as const satisfies Partial<
  Record<MarkKind, { side: 1 | -1; most: number; words: (share: string) => string }>
>;

function doubtOf(kind: keyof typeof doubted, rectangle: Rectangle, { picture }: Still): string[] {
  const { side, most, words } = doubted[kind];
  const own = tonesIn(picture, rectangle);
  const tone = own.reduce((sum, value) => sum + value, 0) / own.length;
  const all = tonesIn(picture, { x: 0, y: 0, width: picture.width, height: picture.height });
  const beyond = all.filter((value) => side * (value - tone) > margin).length / all.length;
  return beyond > most ? [`what is marked as ${words(`${Math.round(100 * beyond)} %`)}`] : [];
}

/** Marks that may be, and what speaks against the others: clauses without a full stop. */
export interface WeighedMarks {
  readonly usable: Marks;
  readonly doubts: readonly string[];
}

/**
 * Parts marks that cannot be what they are said to be from the others: a measurement takes every mark for true.
 * @param marks within their stills
 */
export function weighMarks(stills: readonly Still[], marks: Marks): WeighedMarks {
  const doubts: string[] = [];
  const mayBe = (kind: keyof typeof doubted) =>
    (marks[kind] ?? []).filter((rectangle) => {
      const found = doubtOf(kind, rectangle, stills[rectangle.still - 1]);
      doubts.push(...found);
      return found.length === 0;
    });
  const usable = { ...marks, black: mayBe('black'), clear: mayBe('clear'), film: mayBe('film') };
  return { usable, doubts };
}

/** A grey that lies this far from neutral after all, in equivalent density, was a coloured thing. */
const greyWithin = 0.2;

/** What speaks against marks of grey, seen from what was measured with them. */
export function greyDoubts(points: Measurement['points']): string[] {
  const away = points
    .filter(({ kind }) => kind === 'neutral')
    .map(({ after }) => Math.max(...after) - Math.min(...after));
  return away.some((spread) => spread > greyWithin)
    ? ['what is marked as grey is still coloured once corrected, so it may not have been grey']
    : [];
}
