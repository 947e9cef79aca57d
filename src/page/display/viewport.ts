import type { Box } from '../../picture/canvas.js';

/** What part of a picture is looked at. */
export interface Viewport {
  /** Canvas pixels a picture pixel; undefined: as large as fits. */
  readonly zoom?: number;
  /** What lies in the middle of a tile, shares of the picture as seen. */
  readonly x: number;
  readonly y: number;
}

export const wholePicture: Viewport = { x: 0.5, y: 0.5 };

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The zoom at which a picture just fits a box. */
export const fittingZoom = (picture: Size, box: Size): number =>
  Math.min(box.width / picture.width, box.height / picture.height);

/** Where the whole picture lies, so that the viewport is what the box shows of it. */
export function pictureBox(viewport: Viewport, picture: Size, box: Box): Box {
  const zoom = viewport.zoom ?? fittingZoom(picture, box);
  const [width, height] = [picture.width * zoom, picture.height * zoom];
  const { x, y } = viewport.zoom === undefined ? wholePicture : viewport;
  return {
    x: Math.round(box.x + box.width / 2 - x * width),
    y: Math.round(box.y + box.height / 2 - y * height),
    width,
    height,
  };
}

const clamp = (value: number) => Math.min(1, Math.max(0, value));

/** The viewport moved by canvas pixels: what is under the finger goes with it. */
export function panned(viewport: Viewport, picture: Size, box: Box, dx: number, dy: number): Viewport {
  if (viewport.zoom === undefined) return viewport;
  const { width, height } = pictureBox(viewport, picture, box);
  return { ...viewport, x: clamp(viewport.x - dx / width), y: clamp(viewport.y - dy / height) };
}

const largestZoom = 16;

/**
 * The viewport at another zoom, the point under `at` (canvas pixels; the box's middle when left out) staying where it is.
 * It goes no smaller than fits, or than one canvas pixel a picture pixel where the box has room for more.
 */
export function zoomed(
  viewport: Viewport,
  picture: Size,
  box: Box,
  factor: number,
  at: { x: number; y: number } = { x: box.x + box.width / 2, y: box.y + box.height / 2 },
): Viewport {
  const fitting = fittingZoom(picture, box);
  const before = viewport.zoom ?? fitting;
  const [least, most] = [Math.min(1, fitting), Math.max(largestZoom, fitting)];
  const zoom = Math.min(most, Math.max(least, before * factor));
  if (Math.abs(zoom / fitting - 1) < 0.001) return wholePicture;
  const shown = pictureBox(viewport, picture, box);
  const [u, v] = [(at.x - shown.x) / shown.width, (at.y - shown.y) / shown.height];
  const [dx, dy] = [at.x - box.x - box.width / 2, at.y - box.y - box.height / 2];
  return {
    zoom,
    x: clamp(u - dx / (picture.width * zoom)),
    y: clamp(v - dy / (picture.height * zoom)),
  };
}
