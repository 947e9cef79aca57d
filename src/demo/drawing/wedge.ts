import { edge, type Layer, paint, pixelOf } from './layer.js';

/**
 * Log10 exposures of the wedge's steps, from clear film to black: those of a step tablet printed onto the edge of the
 * frame under the light that the film is balanced for.
 */
export const wedgeSteps = [0.7, 0.1, -0.15, -0.4, -0.65, -0.9, -1.15, -1.4, -1.65, -1.95, -2.6] as const;

const width = 0.05;
const margin = 0.018;

/** The middle of a step, clear of its neighbours, in pixels of a picture. */
export interface StepBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where the steps lie in a picture, top (clear) to bottom (black): along the right edge. */
export function wedgeBoxes(pictureWidth: number, pictureHeight: number): StepBox[] {
  const step = (1 - 2 * margin) / wedgeSteps.length;
  return wedgeSteps.map((_, i) => ({
    x: Math.round(pictureWidth * (1 - 0.85 * width * 0.75)),
    y: Math.round(pictureHeight * (margin + (i + 0.2) * step)),
    width: Math.max(1, Math.round(pictureWidth * 0.7 * width * 0.75)),
    height: Math.max(1, Math.round(pictureHeight * 0.6 * step)),
  }));
}

/** Paints the wedge along the right edge of a frame. */
export function paintWedge(layer: Layer): void {
  const right = layer.frameX + layer.width / layer.scale;
  const [top, high] = [layer.frameY, layer.height / layer.scale];
  const pixel = pixelOf(layer);
  paint(layer, [right - width * (layer.width / layer.scale) * 0.75, top, right, top + high], (x, y, out) => {
    const at = ((y - top) / high - margin) / ((1 - 2 * margin) / wedgeSteps.length);
    const step = Math.min(wedgeSteps.length - 1, Math.max(0, Math.floor(at)));
    out.fill(10 ** wedgeSteps[step]);
    return edge(right - width * (layer.width / layer.scale) * 0.75 - x, pixel);
  });
}
