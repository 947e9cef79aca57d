/** Which codes hold black and white: all of them, or those that video levels leave between foot- and headroom. */
export type SignalRange = 'full' | 'legal';

/** Codes as shares of the full code range. */
export interface CodeEnds {
  readonly black: number;
  readonly white: number;
}

/** The legal levels of 8 bits, 16 and 235 of 255 (ITU-R BT.709-6). */
export const eightBitLegal: CodeEnds = { black: 16 / 255, white: 235 / 255 };

/**
 * Where black and white lie, as shares of the full code range: the legal levels of 10 bits, 64 and 940 of 1023 (ITU-R
 * BT.709-6; BT.2100-2, table 9). As shares, those of 8 bits differ by 0.7 of an 8-bit code at white.
 */
export const rangeScale = {
  full: { black: 0, white: 1 },
  legal: { black: 64 / 1023, white: 940 / 1023 },
} as const satisfies Record<SignalRange, CodeEnds>;

/** Takes the range off. @param codeShare code as a share of the full range, 0..1 @returns signal, black 0, white 1 */
export function toFull(codeShare: number, range: SignalRange = 'legal'): number {
  const { black, white } = rangeScale[range];
  return (codeShare - black) / (white - black);
}

/** Puts a signal into the range. @param signal black 0, white 1 @returns code as a share of the full range */
export function fromFull(signal: number, range: SignalRange = 'legal'): number {
  const { black, white } = rangeScale[range];
  return black + signal * (white - black);
}
