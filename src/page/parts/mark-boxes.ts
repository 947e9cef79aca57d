import { nothing, svg } from 'lit-html';
import type { Box } from '../display/display.js';
import type { Still } from '../state/sheet.js';
import { seenPlace } from '../state/turn.js';
import { isMeasuring } from '../state/view.js';
import type { glassEvents } from './glass.js';
import { markWords } from './measuring.js';
import type { Page } from './parts.js';
import { hundredths } from './styled.js';
import { layout } from './tiles.js';

/** Half of the line around a mark: it is drawn inside, so that none of it leaves the picture. */
const inset = 1;
/** Room that a label takes above its mark. */
const labelHeight = 20;

type Corner = readonly [x: number, y: number];

/**
 * A mark between two corners. Its label stands above, or below where there is no room, and reaches to the side on which
 * there is more.
 * @param tile the picture's place on the bed
 */
function markBox(a: Corner, b: Corner, tile: Box, words: string, draft = false) {
  const [left, right] = [Math.min(a[0], b[0]), Math.max(a[0], b[0])];
  const [top, bottom] = [Math.min(a[1], b[1]), Math.max(a[1], b[1])];
  const isRight = left + right > 2 * tile.x + tile.width;
  const below = Math.min(bottom + labelHeight, tile.y + tile.height) - 4;
  return svg`<g class=${draft ? 'draft' : 'mark'}>
    <rect x=${hundredths(left + inset)} y=${hundredths(top + inset)}
      width=${hundredths(Math.max(1, right - left - 2 * inset))}
      height=${hundredths(Math.max(1, bottom - top - 2 * inset))}></rect>
    <text x=${hundredths(isRight ? right - 4 : left + 4)} y=${hundredths(top < tile.y + labelHeight ? below : top - 5)}
      text-anchor=${isRight ? 'end' : 'start'}>${words}</text>
  </g>`;
}

/** A box of the canvas in pixels of the page. */
const onPage = ({ x, y, width, height }: Box, scale: number): Box => ({
  x: x * scale,
  y: y * scale,
  width: width * scale,
  height: height * scale,
});

/** Marks of the still, and the one being drawn, over a tile; in pixels of the page. */
export function rectangles(page: Page, still: Still, glass: ReturnType<typeof glassEvents>) {
  const { store, sight, dialogs } = page;
  const sheet = store.sheet();
  const [tile] = layout(sheet, store.view, still, sight, dialogs.holding).scene.tiles;
  const scale = sight.element.clientWidth / sight.width || 1;
  const [box, picture] = [onPage(tile.box, scale), onPage(tile.picture, scale)];
  const inPicture = (x: number, y: number): Corner => [
    picture.x + x * picture.width,
    picture.y + y * picture.height,
  ];
  const at = (x: number, y: number) =>
    inPicture(...seenPlace(sheet.turn, [x / still.width, y / still.height]));
  const draft = store.view.marking && glass.draft();
  const here = isMeasuring(sheet, store.view) ? sheet.marks.filter((mark) => mark.still === still.id) : [];
  return svg`${here.map(({ kind, x, y, width, height }) =>
    markBox(at(x, y), at(x + width, y + height), box, markWords[kind].name),
  )}${
    draft
      ? markBox(
          inPicture(draft.from.x, draft.from.y),
          inPicture(draft.to.x, draft.to.y),
          box,
          markWords[store.view.marking!].name,
          true,
        )
      : nothing
  }`;
}
