import { odd, type TransferFunction } from './transfer-function.js';

const exponent = 2.4;

/**
 * The reference display of BT.1886 for a given white and black. Below its own black the formula stands still; here it
 * goes on, odd about that point, so that it can be undone.
 * @param whiteCdM2 luminance of white, Lw @param blackCdM2 luminance of black, Lb, 0 or more and below white
 */
export function bt1886Display(whiteCdM2: number, blackCdM2: number): TransferFunction {
  const white = whiteCdM2 ** (1 / exponent);
  const black = blackCdM2 ** (1 / exponent);
  const gain = (white - black) ** exponent;
  const lift = black / (white - black);
  const power = odd((x) => gain * x ** exponent);
  const root = odd((light) => (light / gain) ** (1 / exponent));
  return {
    title: 'BT.1886 display',
    source: 'ITU-R BT.1886 (2011)',
    whiteLight: whiteCdM2,
    decode: (signal) => power(signal + lift),
    encode: (light) => root(light) - lift,
  };
}

/** The reference display with white 1 and black 0: what a picture graded for television is shown with. */
export const bt1886 = bt1886Display(1, 0);
