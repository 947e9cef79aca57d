/** Named tolerances, each with its reason. */

/** Half a unit of the last decimal in print, and a hair for the rounding of our own arithmetic. */
export const printed = (decimals: number): number => 0.5 * 10 ** -decimals * (1 + 1e-6) + 1e-12;

/** An inverse of double-precision formulas: a few hundred roundings of 2e-16 at values near 1. */
export const inverse = 1e-12;

/** sRGB light between the two branches of the decoding at signal 0.04045: the constants are rounded, no signal has it. */
export const srgbGapLight = 2.4e-9;

/** Chromaticity of the standard lights from 5 nm tables against five printed decimals: the sources agree to this. */
export const whiteChromaticity = 4e-5;

/** Tristimulus values of the standard lights, Y = 100, from tables that are rounded to three or four decimals. */
export const whiteXyz = 0.002;

/** Spectral tables made with formulas against printed ones, of 100 at 560 nm: both are rounded to three or four decimals. */
export const spectralTable = 0.001;

/** Colour temperature and distance from the locus, as the printed rows agree between three programs. */
export const colourTemperatureKelvin = 0.3;
export const duv = 2e-5;

/** CIEDE2000 and CIELAB against other double-precision programs: roundings of 1e-16 grown by powers and roots. */
export const difference = 1e-9;

/** Planck radiators summed at 5 nm, 380 to 780 nm, against 1 nm, 360 to 830 nm: the published columns differ by this. */
export const planckOneNm = 7e-5;

/**
 * Daylight spectra against the chromaticity they are made for: the formula's rounded coefficients miss it, in the
 * published chromaticities of D50, D55, D65 and D75 too, by up to 1.2e-4 in y.
 */
export const daylightFormula = 1.2e-4;

/**
 * Colour temperature 0.0134 off the locus: between the 1 nm and the 5 nm locus the tangent turns by about 3e-4, which
 * moves the foot of so long a perpendicular by 0.3 K more.
 */
export const colourTemperatureFarKelvin = 0.6;

/** Lightness, chroma and hue of worked examples: four decimals in print, two programs agree to this. */
export const appearance = 2e-4;

/**
 * Legal levels of 8 and 12 bits as shares of full code against those of 10 bits: 255 and 4095 are no multiples of 1023,
 * which moves white by 0.7 of an 8-bit code.
 */
export const legalShareOfOtherDepths = 0.7 / 255;

/** sRGB encoding near its break: the standard's 0.0031308 is rounded, ours follows from the break of the decoding. */
export const srgbRoundedBreak = 1e-6;

/** The camera curve with 1.099 and 0.018 against that with exact alpha and beta: most just above the break. */
export const bt2020RoundedConstants = 2.5e-4;

/** HLG with b and c computed from a, against the same rounded to 8 decimals: up to the slope of the exponential. */
export const hlgRoundedConstants = 1e-7;

/** CIELAB through a colour engine in single precision: a few roundings of 1e-7 of values near 100. */
export const singlePrecisionLab = 5e-5;

/** 8-bit codes: a screen's picture and a file's may round to either side; tables reach the screen as single floats. */
export const roundingOfTheScreen = 1;
