import type { Box, Scene, Tile } from '../display/display.js';
import { pictureBox, type Size } from '../display/viewport.js';
import type { Sheet, Still } from '../state/sheet.js';
import type { View } from '../state/view.js';

/** Code value of the bed around the picture: mid-dark and neutral, as in a viewing room. */
const bed = 0.22;
/** Canvas pixels between pictures side by side. */
const gap = 8;

/** A still's size as it is seen. */
export const seenSize = (still: Still, { turn }: Sheet): Size =>
  turn.transposed ? { width: still.height, height: still.width } : still;

/** Boxes of some pictures on the canvas: beside each other, or two rows of two. */
function boxes(count: number, { width, height }: Size): Box[] {
  const columns = count === 1 ? 1 : 2;
  const rows = Math.ceil(count / columns);
  const [w, h] = [
    Math.floor((width - gap * (columns - 1)) / columns),
    Math.floor((height - gap * (rows - 1)) / rows),
  ];
  return Array.from({ length: count }, (_, i) => ({
    x: (i % columns) * (w + gap),
    y: Math.floor(i / columns) * (h + gap),
    width: w,
    height: h,
  }));
}

type Seen = Pick<Tile, 'slot' | 'isRecording'>;

/** What each picture on the canvas shows. */
function seenOn({ cards }: Sheet, { comparison, card }: View, holding: boolean): Seen[] {
  if (comparison === 'looks') return cards.map(({ id }) => ({ slot: id, isRecording: holding }));
  const after = { slot: card, isRecording: comparison === 'before' || holding };
  return comparison === 'beside' ? [{ slot: card, isRecording: true }, after] : [after];
}

/** Pictures on the canvas, with what each shows in words. */
export interface Layout {
  readonly scene: Scene;
  readonly captions: readonly (Seen & { readonly box: Box })[];
}

/** What the canvas shows. */
export function layout(sheet: Sheet, view: View, still: Still, canvas: Size, holding: boolean): Layout {
  const shown = seenOn(sheet, view, holding);
  const size = seenSize(still, sheet);
  const places = boxes(shown.length, canvas);
  const tiles = shown.map((seen, i): Tile => {
    const box = places[i];
    const picture = pictureBox(view.viewport, size, box);
    const split = view.comparison === 'split' && !seen.isRecording;
    return {
      box,
      picture,
      ...seen,
      ...(split ? { splitX: Math.round(picture.x + view.split * picture.width) } : {}),
      marks: view.marks,
    };
  });
  const captions = places.map((box, i) => ({ box, ...shown[i] }));
  return { scene: { turn: sheet.turn, tiles, bed }, captions };
}
