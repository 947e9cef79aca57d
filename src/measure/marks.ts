import { InputError, type Problem } from '../errors/input-error.js';
import { type TransferFunction } from '../colour/transfer-functions/index.js';
import { densityOf } from '../film/density.js';
import type { Triple } from '../maths/matrix3.js';
import type { Picture } from '../picture/picture.js';
import { lightBlocks } from './light-blocks.js';

/** A rectangle of one of the stills, in pixels from the top left; `still` counts from 1. */
export interface Rectangle {
  readonly still: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What is known in the pictures. */
export interface Marks {
  /** Unexposed film: frame line, border; on reversal film the densest thing there is. */
  readonly black?: readonly Rectangle[];
  /** Light with no film at all: perforation, punched leader. */
  readonly clear?: readonly Rectangle[];
  /** Fully clear film: light-struck leader, scratch. */
  readonly film?: readonly Rectangle[];
  /** Anything known to have been grey or white. */
  readonly neutral?: readonly Rectangle[];
}

export type MarkKind = keyof Marks;
export const markKinds = ['black', 'clear', 'film', 'neutral'] as const satisfies readonly MarkKind[];

/** Mean light of a marked rectangle. */
export interface MarkReading {
  readonly rectangle: Rectangle;
  /**
   * Linear light in the primaries of densities, on the camera's scale; undefined when the rectangle is burnt out, or
   * blocked where no black was marked.
   */
  readonly light: Triple | undefined;
  /** The same, burnt-out pixels taken at the end of the scale. */
  readonly atLeast: Triple;
  readonly burntOut: number;
  readonly blocked: number;
}

/** Smallest edge of a rectangle in pixels: below, noise speaks and not the film. */
export const smallestEdge = 2;

function problemOf(kind: MarkKind, r: Rectangle, stills: readonly Picture[]): Problem | undefined {
  const field = `${kind} ${r.still}:${r.x},${r.y},${r.width},${r.height}`;
  const still = stills[r.still - 1];
  if (still === undefined)
    return { field, what: `there is no still ${r.still}`, allowed: `1 to ${stills.length}` };
  const numbers = [r.x, r.y, r.width, r.height];
  if (!numbers.every((v) => Number.isInteger(v) && v >= 0))
    return { field, what: 'a rectangle is four whole numbers of pixels', allowed: 'x,y,width,height' };
  if (r.width < smallestEdge || r.height < smallestEdge)
    return { field, what: 'the rectangle is too small', allowed: `${smallestEdge} pixels or more each way` };
  if (r.x + r.width > still.width || r.y + r.height > still.height)
    return {
      field,
      what: 'the rectangle reaches beyond the still',
      allowed: `within ${still.width} x ${still.height}`,
    };
  return undefined;
}

/** @throws InputError naming every rectangle that is not within its still */
export function checkMarks(marks: Marks, stills: readonly Picture[]): void {
  const problems = markKinds.flatMap((kind) =>
    (marks[kind] ?? []).flatMap((rectangle) => problemOf(kind, rectangle, stills) ?? []),
  );
  if (problems.length > 0) throw new InputError(problems);
}

function read(
  rectangle: Rectangle,
  stills: readonly Picture[],
  encoding: TransferFunction,
  black: boolean,
): MarkReading {
  const { light, atLeast, burntOut, blocked } = lightBlocks(stills[rectangle.still - 1], encoding, rectangle);
  const count = light.length / 3;
  const mean = (k: number) => light.reduce((sum, v, i) => (i % 3 === k ? sum + v / count : sum), 0);
  const readable: Triple | undefined = count > 0 ? [mean(0), mean(1), mean(2)] : undefined;
  // black whose one channel ends at code 0 still tells by the others: so a green black does, its magenta lost
  const seen = readable ?? (black ? atLeast : undefined);
  // a rectangle half of whose pixels are burnt out is not a reading
  return { rectangle, light: burntOut < 0.5 ? seen : undefined, atLeast, burntOut, blocked };
}

/** Readings of all rectangles of a kind. */
export const readMarks = (
  rectangles: readonly Rectangle[] | undefined,
  stills: readonly Picture[],
  encoding: TransferFunction,
  kind: MarkKind,
): MarkReading[] =>
  (rectangles ?? []).map((rectangle) => read(rectangle, stills, encoding, kind === 'black'));

/** Densities of a reading relative to the open gate. */
export const densitiesOf = (light: Triple, openGate: number): Triple => [
  densityOf(light[0] / openGate),
  densityOf(light[1] / openGate),
  densityOf(light[2] / openGate),
];
