import { type TransferFunctionName, transferFunctions } from '../colour/transfer-functions/index.js';
import { InputError } from '../errors/input-error.js';
import { markKinds, type Marks, type Still } from '../measure/index.js';
import { lightBlocks } from '../measure/light-blocks.js';
import { hasColour, type Picture } from '../picture/picture.js';

/** A still of a reel that tells nothing. */
export interface UnusedStill {
  /** Counted from 0, as the stills were given. */
  readonly index: number;
  readonly name: string;
  /** Said after its name, without a full stop. */
  readonly why: string;
}

const hint =
  'Give stills in colour with parts that are neither burnt out nor blocked, as the camera wrote them.';

function whyUnused(still: Still, picture: Picture, encoding: TransferFunctionName): string | undefined {
  if (!hasColour(still.picture)) return 'has no colour, so it tells nothing of dyes';
  const { width, height } = picture;
  const { light } = lightBlocks(picture, transferFunctions[encoding], { x: 0, y: 0, width, height });
  return light.length > 0
    ? undefined
    : 'is burnt out or blocked in every part, so nothing can be read from it';
}

/**
 * The stills of a reel that tell nothing: a title in grey or a frame of leader is no reason not to measure the others.
 * @param pictures the same stills as measuring reads them
 * @throws InputError where none is left
 */
export function unusedStills(
  stills: readonly Still[],
  pictures: readonly Picture[],
  encoding: TransferFunctionName,
): UnusedStill[] {
  const unused = stills.flatMap((still, index) => {
    const why = whyUnused(still, pictures[index], encoding);
    return why === undefined ? [] : [{ index, name: still.name, why }];
  });
  if (unused.length > 0 && unused.length === stills.length)
    throw new InputError(unused.map(({ name, why }) => ({ file: name, what: why, hint })));
  return unused;
}

/** Marks by the numbers that their stills have once the unused ones are left out, and their own marks with them. */
export function marksWithout(marks: Marks, unused: readonly UnusedStill[]): Marks {
  const gone = new Set(unused.map(({ index }) => index + 1));
  const before = (still: number) => unused.filter(({ index }) => index + 1 < still).length;
  return Object.fromEntries(
    markKinds.map((kind) => [
      kind,
      (marks[kind] ?? [])
        .filter(({ still }) => !gone.has(still))
        .map((rectangle) => ({ ...rectangle, still: rectangle.still - before(rectangle.still) })),
    ]),
  );
}
