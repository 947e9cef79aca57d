import { edge, type Layer, paint, pixelOf } from './layer.js';

/**
 * Log10 exposures of the wedge's steps, from clear film to black: those of a step tablet printed onto the edge of the
 * frame under the light that the film is balanced for.
 */
export const wedgeSteps = [0.7, 0.1, -0.1, -0.3, -0.5, -0.7, -0.9, -1.1, -1.35, -1.65, -2.6] as const;

/** Width of the wedge as a share of the picture's, and what is left above and below the steps, of its height. */
const wide = 0.0375;
const margin = 0.018;
const stepHigh = (1 - 2 * margin) / wedgeSteps.length;

/** A rectangle of a picture, in pixels from its top left corner. */
export interface StepBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Where the steps lie in a picture, from the top (clear film) to the bottom (black), each box well clear of its
 * neighbours: marks to measure at.
 */
export function wedgeBoxes(pictureWidth: number, pictureHeight: number): StepBox[] {
  return wedgeSteps.map((_, i) => ({
    x: Math.round(pictureWidth * (1 - 0.85 * wide)),
    y: Math.round(pictureHeight * (margin + (i + 0.2) * stepHigh)),
    width: Math.max(1, Math.round(0.7 * pictureWidth * wide)),
    height: Math.max(1, Math.round(0.6 * pictureHeight * stepHigh)),
  }));
}

/** Paints the wedge along the right edge of a frame. */
export function paintWedge(layer: Layer): void {
  const width = layer.width / layer.scale;
  const height = layer.height / layer.scale;
  const right = layer.frameX + width;
  const left = right - wide * width;
  const top = layer.frameY;
  paint(layer, [left, top, right, top + height], (x, y, out) => {
    const at = Math.floor(((y - top) / height - margin) / stepHigh);
    out.fill(10 ** wedgeSteps[Math.min(wedgeSteps.length - 1, Math.max(0, at))]);
    return edge(left - x, pixelOf(layer));
  });
}
