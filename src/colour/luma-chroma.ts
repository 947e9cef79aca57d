import { fromFull, type SignalRange } from './signal-range.js';

/** Luma weights of red and blue; green's is what is left to 1. */
interface LumaWeights {
  readonly title: string;
  readonly source: string;
  readonly red: number;
  readonly blue: number;
}

/** The matrices between R'G'B' and luma with two colour differences, non-constant luminance. */
export const matrices = {
  bt601: { title: 'BT.601', source: 'ITU-R BT.601-7, 2.5.1', red: 0.299, blue: 0.114 },
  bt709: { title: 'BT.709', source: 'ITU-R BT.709-6, 3.2', red: 0.2126, blue: 0.0722 },
  bt2020: { title: 'BT.2020', source: 'ITU-R BT.2020-2, table 4', red: 0.2627, blue: 0.0593 },
} as const satisfies Record<string, LumaWeights>;

export type MatrixName = keyof typeof matrices;

/** What a plane's code values stand for: `code = zero + span * value`. */
export interface CodeScale {
  /** Code of black, or of no colour difference. */
  readonly zero: number;
  /** Codes from black to white, or from the lowest colour difference (-0.5) to the highest (0.5). */
  readonly span: number;
}

/**
 * Codes of luma, or of R', G' and B'. Legal: 219 steps from 16, times 2^(bits - 8) (BT.709-6, 3.4; BT.2020-2, table 5).
 * Full: all codes (ITU-T H.273, 8.3).
 * @param bits 8 to 16
 */
export function lumaCodes(bits: number, range: SignalRange): CodeScale {
  const step = 2 ** (bits - 8);
  return range === 'full' ? { zero: 0, span: 2 ** bits - 1 } : { zero: 16 * step, span: 219 * step };
}

/** Codes of a colour difference. Legal: 224 steps about 128, times 2^(bits - 8); full: all codes about the middle one. */
export function chromaCodes(bits: number, range: SignalRange): CodeScale {
  return { zero: 2 ** (bits - 1), span: range === 'full' ? 2 ** bits - 1 : 224 * 2 ** (bits - 8) };
}

/** `to(from^-1(code))` of two scales, as one factor and one zero. */
export function between(from: CodeScale, to: CodeScale): { readonly factor: number; readonly zero: number } {
  const factor = to.span / from.span;
  return { factor, zero: to.zero - factor * from.zero };
}

/** What the three planes of a picture stand for, and how wide the code values of its red, green and blue are. */
export interface LumaChromaCoding {
  readonly matrix: MatrixName;
  /** Bits of a plane's code, 8 to 16. */
  readonly bits: number;
  /** Range of the planes. */
  readonly range: SignalRange;
  /** Range of red, green and blue at 16 bits. */
  readonly rgbRange: SignalRange;
}

/** Codes of red, green and blue, 0..65535 for black to white; legal as this program's looks mean it. */
export function rgbCodes(range: SignalRange): CodeScale {
  const zero = 65535 * fromFull(0, range);
  return { zero, span: 65535 * fromFull(1, range) - zero };
}

/** Plane codes to red, green and blue: `red = luma y + redFromCr cr + redZero` and so on. */
export interface ToRgbFactors {
  readonly luma: number;
  readonly redFromCr: number;
  readonly greenFromCb: number;
  readonly greenFromCr: number;
  readonly blueFromCb: number;
  readonly redZero: number;
  readonly greenZero: number;
  readonly blueZero: number;
}

/** The equations of the standards, solved for R'G'B' and folded together with the codes' zeros and spans. */
export function toRgbFactors({ matrix, bits, range, rgbRange }: LumaChromaCoding): ToRgbFactors {
  const { red, blue } = matrices[matrix];
  const green = 1 - red - blue;
  const [y, c, rgb] = [lumaCodes(bits, range), chromaCodes(bits, range), rgbCodes(rgbRange)];
  const luma = rgb.span / y.span;
  const chroma = rgb.span / c.span;
  const redFromCr = 2 * (1 - red) * chroma;
  const blueFromCb = 2 * (1 - blue) * chroma;
  const greenFromCr = (-red / green) * redFromCr;
  const greenFromCb = (-blue / green) * blueFromCb;
  const zero = rgb.zero - luma * y.zero;
  return {
    luma,
    redFromCr,
    greenFromCb,
    greenFromCr,
    blueFromCb,
    redZero: zero - redFromCr * c.zero,
    greenZero: zero - (greenFromCb + greenFromCr) * c.zero,
    blueZero: zero - blueFromCb * c.zero,
  };
}

/** Red, green and blue to plane codes: `y = luma . rgb + lumaZero`, `cb = cb . rgb + chromaZero`, `cr` likewise. */
export interface FromRgbFactors {
  readonly luma: readonly [red: number, green: number, blue: number];
  readonly cb: readonly [red: number, green: number, blue: number];
  readonly cr: readonly [red: number, green: number, blue: number];
  readonly lumaZero: number;
  readonly chromaZero: number;
}

/** The equations as the standards print them: Y' is the weighted sum, CB and CR are scaled differences of B' and R' from it. */
export function fromRgbFactors({ matrix, bits, range, rgbRange }: LumaChromaCoding): FromRgbFactors {
  const { red, blue } = matrices[matrix];
  const weights = [red, 1 - red - blue, blue] as const;
  const [y, c, rgb] = [lumaCodes(bits, range), chromaCodes(bits, range), rgbCodes(rgbRange)];
  const scaled = (factors: readonly number[], span: number) =>
    factors.map((factor) => (factor * span) / rgb.span) as [number, number, number];
  const difference = (channel: 0 | 2) =>
    weights.map((weight, i) => ((i === channel ? 1 : 0) - weight) / (2 * (1 - weights[channel])));
  const luma = scaled(weights, y.span);
  return {
    luma,
    cb: scaled(difference(2), c.span),
    cr: scaled(difference(0), c.span),
    // Weights sum to one, differences to nothing: only luma feels where black lies in red, green and blue.
    lumaZero: y.zero - (rgb.zero * y.span) / rgb.span,
    chromaZero: c.zero,
  };
}
