/** An encoding: how linear light becomes a signal, and back. */
export interface TransferFunction {
  readonly title: string;
  readonly source: string;
  /** The linear level of diffuse white, in the light of `decode`. */
  readonly whiteLight: number;
  /** @param signal code value, 0..1, legal range already taken off @returns linear light; finite for every finite signal */
  readonly decode: (signal: number) => number;
  /** @param light linear light @returns signal, 0..1 for what the encoding holds; finite for every finite light */
  readonly encode: (light: number) => number;
}

/** Signal and light stop here, far beyond anything recorded, so that nothing computed from them overflows. */
const farthest = 1e30;

export const bounded = (x: number): number => Math.max(-farthest, Math.min(farthest, x));

/** Continues a curve that is given from zero up: odd about zero, and bounded. */
export function odd(curve: (x: number) => number): (x: number) => number {
  return (x) => (x < 0 ? -bounded(curve(bounded(-x))) : bounded(curve(bounded(x))));
}
