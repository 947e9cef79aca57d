import type { Box } from '../display/display.js';
import { fittingZoom, panned, type Size, wholePicture, zoomed } from '../display/viewport.js';
import { addMark } from '../state/actions.js';
import type { Sheet, Still } from '../state/sheet.js';
import { storedPlace, type Turn } from '../state/turn.js';
import type { Page } from './parts.js';
import { layout, seenSize } from './tiles.js';

/** The still that is looked at. */
export const stillOf = ({ store }: Page): Still | undefined =>
  store.sheet().stills.find(({ id }) => id === store.view.still);

interface Place {
  readonly x: number;
  readonly y: number;
}

/** A place on the canvas in its pixels. */
function onCanvas({ sight }: Page, { clientX, clientY }: { clientX: number; clientY: number }): Place {
  const { left, top, width, height } = sight.element.getBoundingClientRect();
  return {
    x: ((clientX - left) * sight.width) / width,
    y: ((clientY - top) * sight.height) / height,
  };
}

/** The tile under a place; the first where there is none. */
function tileAt(page: Page, still: Still, { x, y }: Place) {
  const { store, sight, dialogs } = page;
  const { tiles } = layout(store.sheet(), store.view, still, sight, dialogs.holding).scene;
  const inside = ({ box }: { box: Box }) =>
    x >= box.x && y >= box.y && x < box.x + box.width && y < box.y + box.height;
  return tiles.find(inside) ?? tiles[0];
}

/** As large as fits. */
export const zoomToWhole = ({ store }: Page): void => store.look({ viewport: wholePicture });

/** Zooms by a factor about a place, or the middle. */
export function zoomBy(page: Page, factor: number, at?: Place): void {
  const still = stillOf(page);
  if (still === undefined) return;
  const { store } = page;
  const { box } = tileAt(page, still, at ?? { x: 0, y: 0 });
  const size = seenSize(still, store.sheet());
  store.look({ viewport: zoomed(store.view.viewport, size, box, factor, at) });
}

/** One picture pixel on one of the screen. */
export function zoomToPixels(page: Page, at?: Place): void {
  const still = stillOf(page);
  if (still === undefined) return;
  const { box } = tileAt(page, still, at ?? { x: 0, y: 0 });
  const size = seenSize(still, page.store.sheet());
  const now = page.store.view.viewport.zoom ?? fittingZoom(size, box);
  zoomBy(page, 1 / now, at);
}

export function panBy(page: Page, dx: number, dy: number): void {
  const still = stillOf(page);
  if (still === undefined) return;
  const { store } = page;
  const { box } = tileAt(page, still, { x: 0, y: 0 });
  const size: Size = seenSize(still, store.sheet());
  store.look({ viewport: panned(store.view.viewport, size, box, dx, dy) });
}

/** A rectangle between two places of the picture as seen (shares 0..1), in the stored pixels of the still. */
export function storedRectangle(turn: Turn, still: Size, a: Place, b: Place): Box {
  const [[u0, v0], [u1, v1]] = [storedPlace(turn, [a.x, a.y]), storedPlace(turn, [b.x, b.y])];
  const pixel = (share: number, length: number) => Math.min(length, Math.max(0, Math.round(share * length)));
  const [x0, x1] = [pixel(Math.min(u0, u1), still.width), pixel(Math.max(u0, u1), still.width)];
  const [y0, y1] = [pixel(Math.min(v0, v1), still.height), pixel(Math.max(v0, v1), still.height)];
  return { x: x0, y: y0, width: x1 - x0, height: y1 - y0 };
}

/** Smallest mark that is taken for one, pixels: a mere click is none. */
const leastMark = 3;

/** Farther than this, canvas pixels, a press is no click. */
const clickReach = 4;

/** The rectangle that is being drawn, shares of the picture as seen. */
export interface Draft {
  readonly from: Place;
  readonly to: Place;
}

/** What fingers and mouse do on the picture: pan, pinch, wheel, and draw marks. */
export function glassEvents(page: Page) {
  const { store } = page;
  const down = new Map<number, Place>();
  let draft: Draft | undefined;
  /** Where a press began, as long as it may be a click. */
  let pressed: Place | undefined;

  /** A click on one of several looks chooses it. */
  function chooseLook(still: Still, place: Place): void {
    const { slot } = tileAt(page, still, place);
    if (store.view.comparison === 'looks') store.look({ card: slot });
  }

  function shareAt(still: Still, place: Place): Place {
    const { picture } = tileAt(page, still, place);
    return { x: (place.x - picture.x) / picture.width, y: (place.y - picture.y) / picture.height };
  }

  function finishDraft(still: Still, sheet: Sheet): void {
    const { marking } = store.view;
    const drawn = draft;
    draft = undefined;
    if (drawn === undefined || marking === undefined) return;
    const rectangle = storedRectangle(sheet.turn, still, drawn.from, drawn.to);
    if (rectangle.width >= leastMark && rectangle.height >= leastMark) {
      addMark(store, { still: still.id, kind: marking, ...rectangle });
      store.look({ marking: undefined });
    }
    page.changed();
  }

  function pinch(id: number, now: Place): void {
    const [other] = [...down].filter(([one]) => one !== id).map(([, place]) => place);
    const before = down.get(id)!;
    const apart = (a: Place, b: Place) => Math.hypot(a.x - b.x, a.y - b.y);
    const factor = apart(now, other) / Math.max(1, apart(before, other));
    zoomBy(page, factor, { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 });
  }

  return {
    draft: () => draft,
    pointerdown: (event: PointerEvent) => {
      const still = stillOf(page);
      if (still === undefined || event.button !== 0) return;
      const place = onCanvas(page, event);
      down.set(event.pointerId, place);
      pressed = down.size === 1 && store.view.marking === undefined ? place : undefined;
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      if (store.view.marking !== undefined) {
        const share = shareAt(still, place);
        draft = { from: share, to: share };
      }
    },
    pointermove: (event: PointerEvent) => {
      const before = down.get(event.pointerId);
      const still = stillOf(page);
      if (before === undefined || still === undefined) return;
      const place = onCanvas(page, event);
      if (pressed && Math.hypot(place.x - pressed.x, place.y - pressed.y) > clickReach) pressed = undefined;
      if (draft !== undefined) {
        draft = { ...draft, to: shareAt(still, place) };
        page.changed();
      } else if (down.size > 1) pinch(event.pointerId, place);
      else panBy(page, place.x - before.x, place.y - before.y);
      down.set(event.pointerId, place);
    },
    pointerup: (event: PointerEvent) => {
      down.delete(event.pointerId);
      const still = stillOf(page);
      if (still === undefined) return;
      if (pressed !== undefined) chooseLook(still, pressed);
      pressed = undefined;
      finishDraft(still, store.sheet());
    },
    pointercancel: (event: PointerEvent) => {
      down.delete(event.pointerId);
      draft = undefined;
    },
    wheel: (event: WheelEvent) => {
      event.preventDefault();
      zoomBy(page, Math.exp(-event.deltaY / 400), onCanvas(page, event));
    },
    dblclick: (event: MouseEvent) => {
      const { zoom } = store.view.viewport;
      if (zoom === undefined) zoomToPixels(page, onCanvas(page, event));
      else zoomToWhole(page);
    },
  };
}
