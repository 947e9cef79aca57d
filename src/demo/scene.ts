import type { Layer } from './drawing/layer.js';
import type { ReversalStock } from './stock/reversal-film.js';

/** A scene to film: what it shows, on what stock, and how it is painted. */
export interface DemoScene {
  readonly title: string;
  readonly note: string;
  readonly stock: ReversalStock;
  /** Seed of the film's grain. */
  readonly grain: number;
  /** Paints the whole frame: every pixel covered, exposures of a perfect white in full light near 1. */
  readonly paint: (frame: Layer) => void;
}
