/**
 * A smooth spectral reflectance (0..1), written down as a level, rises and bands:
 * level + sum of height / (1 + exp((at - nm) / width)) + sum of height exp(-((nm - peak) / width)^2 / 2).
 * A negative height is a fall, or a dip.
 */
export interface ReflectanceCurve {
  readonly level: number;
  /** [height, atNm, widthNm]: to longer wavelengths the reflectance goes up by the height. */
  readonly rises?: readonly (readonly [height: number, atNm: number, widthNm: number])[];
  /** [height, peakNm, widthNm] */
  readonly bands?: readonly (readonly [height: number, peakNm: number, widthNm: number])[];
}
