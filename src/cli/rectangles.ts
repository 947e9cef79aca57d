import { InputError } from '../errors/input-error.js';
import type { Box } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';

/** A rectangle as given: the option, the text, the still it lies in (counted from 0) and its place in pixels. */
export interface GivenRectangle {
  readonly option: string;
  readonly text: string;
  readonly still: number;
  readonly box: Box;
}

const form = /^(?:(\d+):)?(\d+),(\d+),(\d+),(\d+)$/;
const allowed = 'x,y,width,height in pixels of the first still, or N:x,y,width,height of the Nth';

function wrong(
  { option, text }: Pick<GivenRectangle, 'option' | 'text'>,
  what: string,
  hint = '',
): InputError {
  const shown = text.length > 60 ? `${text.slice(0, 57)}...` : text;
  return new InputError({
    field: `${option} ${shown}`,
    what,
    ...(hint === '' ? { allowed } : { hint }),
  });
}

/** Reads `[N:]x,y,width,height`. @throws InputError for anything else, and for an empty rectangle */
export function parseRectangle(option: string, text: string): GivenRectangle {
  const parts = form.exec(text.replaceAll(' ', ''));
  if (parts === null) throw wrong({ option, text }, 'is not a rectangle of whole numbers');
  const [still, x, y, width, height] = parts.slice(1).map((part) => Number(part ?? 1));
  if (still === 0) throw wrong({ option, text }, 'stills are counted from 1');
  if (width === 0 || height === 0) throw wrong({ option, text }, 'is empty: it has no width or no height');
  return { option, text, still: still - 1, box: { x, y, width, height } };
}

/** For an option that may be given more than once. */
export const collectRectangles = (option: string) => (text: string, before: readonly GivenRectangle[]) => [
  ...before,
  parseRectangle(option, text),
];

/**
 * @param smallestEdge pixels that it must have each way
 * @throws InputError unless the rectangle lies wholly in one of the stills, and is so large
 */
export function checkRectangle(
  rectangle: GivenRectangle,
  stills: readonly { readonly name: string; readonly picture: Picture }[],
  smallestEdge = 1,
): void {
  const { still, box } = rectangle;
  if (box.width < smallestEdge || box.height < smallestEdge)
    throw wrong(rectangle, 'is too small', `It must have ${smallestEdge} pixels or more each way.`);
  if (still >= stills.length)
    throw wrong(
      rectangle,
      `there is no still ${still + 1}: ${stills.length === 1 ? 'one was' : `${stills.length} were`} given`,
      'Stills are counted from 1 in the order given.',
    );
  const { name, picture } = stills[still];
  if (box.x + box.width > picture.width || box.y + box.height > picture.height)
    throw wrong(
      rectangle,
      `reaches outside of ${name}`,
      `That still has ${picture.width} x ${picture.height} pixels, counted from the top left.`,
    );
}
