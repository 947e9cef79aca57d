import type { Triple } from '../maths/matrix3.js';
import {
  type MarkKind,
  markKinds,
  type Marks,
  type Measurement,
  type Rectangle,
  type Still,
} from '../measure/index.js';
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
  black: { side: -1, most: 0.4, said: 'lighter', since: 'unexposed film is darker than any picture' },
  clear: { side: 1, most: 0.05, said: 'darker', since: 'nothing is lighter than the light without film' },
  film: { side: 1, most: 0.25, said: 'darker', since: 'no picture is lighter than clear film' },
} as const satisfies Partial<Record<MarkKind, { side: 1 | -1; most: number; said: string; since: string }>>;

const meanTone = (picture: Picture, box: Box) => {
  const tones = tonesIn(picture, box);
  return tones.reduce((sum, tone) => sum + tone, 0) / tones.length;
};

/** Share of a still that is lighter, or darker, than a tone. */
function shareBeyond(picture: Picture, tone: number, side: 1 | -1): number {
  const all = tonesIn(picture, { x: 0, y: 0, width: picture.width, height: picture.height });
  return all.filter((value) => side * (value - tone) > margin).length / all.length;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** Which mark of several is meant, as the user gave it; nothing where it is the only one of its kind. */
function placeIn(marks: Marks, kind: MarkKind, { still, x, y, width, height }: Rectangle): string {
  if ((marks[kind] ?? []).length < 2) return '';
  return ` (${still > 1 ? `${still}:` : ''}${x},${y},${width},${height})`;
}

const notUsed = ': it was not used';

/** What marks are called, those first that let least light through. */
const byLight = {
  black: 'black',
  neutral: 'grey',
  film: 'clear film',
  clear: 'clear',
} as const satisfies Record<MarkKind, string>;

/** A mark, its kind and tone. */
interface TonedMark {
  readonly kind: MarkKind;
  readonly rectangle: Rectangle;
  readonly tone: number;
}

/** Pairs of marks in one still of which the one that must be lighter is the darker: they may have been swapped. */
function swapped(marks: readonly TonedMark[]): (readonly [lighter: TonedMark, darker: TonedMark])[] {
  const rank = ({ kind }: TonedMark) => Object.keys(byLight).indexOf(kind);
  const isSwapped = (one: TonedMark, other: TonedMark) =>
    one.rectangle.still === other.rectangle.still &&
    rank(one) < rank(other) &&
    one.tone - other.tone > margin;
  return marks.flatMap((one) =>
    marks.filter((other) => isSwapped(one, other)).map((other) => [one, other] as const),
  );
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
  const toned = markKinds.flatMap((kind) =>
    (marks[kind] ?? []).map((rectangle) => {
      const { picture } = stills[rectangle.still - 1];
      return { kind, rectangle, tone: meanTone(picture, rectangle) };
    }),
  );
  const doubts: string[] = [];
  const may = toned.filter(({ kind, rectangle, tone }) => {
    if (kind === 'neutral') return true;
    const { side, most, said, since } = doubted[kind];
    const share = shareBeyond(stills[rectangle.still - 1].picture, tone, side);
    if (share <= most) return true;
    const place = placeIn(marks, kind, rectangle);
    doubts.push(
      `what is marked as ${byLight[kind]}${place} is ${said} than ${percent(share)} of its still, and ${since}${notUsed}`,
    );
    return false;
  });
  const pairs = swapped(may);
  for (const [lighter, darker] of pairs) {
    const [a, b] = [lighter, darker].map(
      ({ kind, rectangle }) => `what is marked as ${byLight[kind]}${placeIn(marks, kind, rectangle)}`,
    );
    doubts.push(`${a} is lighter than ${b}, which cannot be: neither was used`);
  }
  const usable = may.filter((mark) => !pairs.flat().includes(mark));
  const ofKind = (kind: MarkKind) =>
    usable.filter((mark) => mark.kind === kind).map(({ rectangle }) => rectangle);
  return { usable: Object.fromEntries(markKinds.map((kind) => [kind, ofKind(kind)])), doubts };
}

/** A grey that lies this far from neutral after all, in equivalent density, was a coloured thing. */
const greyWithin = 0.2;

/** How far each dye's amount lies from the mean of the three. */
const leanOf = (amounts: Triple): Triple => {
  const mean = (amounts[0] + amounts[1] + amounts[2]) / 3;
  return [amounts[0] - mean, amounts[1] - mean, amounts[2] - mean];
};

const dot = (a: Triple, b: Triple) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** What is left of a lean without so much of another as explains it best: none to all of it. */
function leanWithout(lean: Triple, other: Triple): Triple {
  const share = Math.max(0, Math.min(1, dot(lean, other) / (dot(other, other) || 1)));
  return [lean[0] - share * other[0], lean[1] - share * other[1], lean[2] - share * other[2]];
}

/**
 * What speaks against marks of grey, seen from what was measured with them. Where the correction is a careful one, black
 * keeps some colour: as much of it in a grey is the film's and not its own.
 */
export function greyDoubts(points: Measurement['points']): string[] {
  const leansOf = (which: 'black' | 'neutral') =>
    points.filter(({ kind }) => kind === which).map(({ after }) => leanOf(after));
  const blacks = leansOf('black');
  const mean = (k: number) => blacks.reduce((sum, lean) => sum + lean[k] / blacks.length, 0);
  const ofFilm: Triple = [mean(0), mean(1), mean(2)];
  const own = leansOf('neutral').map((lean) => leanWithout(lean, ofFilm));
  return own.some((lean) => Math.max(...lean) - Math.min(...lean) > greyWithin)
    ? ['what is marked as grey is still coloured once corrected, so it may not have been grey']
    : [];
}

/** Share of all stills that may be lighter than the light without film: specks, and a light that is not quite even. */
const mostLighter = doubted.clear.most;

/**
 * Whether an open gate can be what it is said to be.
 * @param pictures as measuring reads them
 * @param level its code, as a share of the last
 */
export function gateDoubts(pictures: readonly Picture[], level: number): string[] {
  const share = pictures.reduce((sum, picture) => sum + shareBeyond(picture, level, 1), 0) / pictures.length;
  return share > mostLighter
    ? [
        `the open gate as given is darker than ${percent(share)} of the stills, and ${doubted.clear.since}${notUsed}`,
      ]
    : [];
}
