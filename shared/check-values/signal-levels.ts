/** The display of BT.1886 with a black that is not zero: [signal, Lw, Lb, L], cd/m2, 7 decimals (ITU-R BT.1886). */
export const bt1886Rows = [
  [0, 100, 0, 0.0], [0.1, 100, 0, 0.3981072], [0.25, 100, 0, 3.5896824], [0.5, 100, 0, 18.9464571],
  [0.75, 100, 0, 50.1356941], [0.9, 100, 0, 77.6572528], [1, 100, 0, 100.0], [0, 100, 0.01, 0.01],
  [0.1, 100, 0.01, 0.6091473], [0.25, 100, 0.01, 4.1719191], [0.5, 100, 0.01, 19.9409273],
  [0.75, 100, 0.01, 51.0041548], [0.9, 100, 0.01, 78.1041539], [1, 100, 0.01, 100.0], [0, 100, 0.1, 0.1],
  [0.1, 100, 0.1, 1.0637856], [0.25, 100, 0.1, 5.2184973], [0.5, 100, 0.1, 21.6049112],
  [0.75, 100, 0.1, 52.4208324], [0.9, 100, 0.1, 78.8268806], [1, 100, 0.1, 100.0],
] as const;

/** An 18 % grey filmed with the BT.709 curve and shown with white at 100 cd/m2: its luminance (both standards). */
export const bt709GreyShownCdM2 = 11.699186;

/** HLG on a display of 1000 cd/m2, system gamma 1.2: [signal, cd/m2], 4 decimals (ITU-R BT.2100-2). */
export const hlgDisplayRows = [[0.1, 1.0653], [0.25, 9.6053], [0.38, 26.2383], [0.5, 50.697], [0.75, 203.1521], [1, 1000.0]] as const;

/**
 * Levels in HDR production on a display of 1000 cd/m2: [reflectance, HLG per cent, PQ per cent, cd/m2], whole numbers
 * (Report ITU-R BT.2408). Grey card, brightest steps of two grey scale charts, diffuse white.
 */
export const hdrLevels = [[0.18, 38, 38, 26], [0.83, 71, 56, 162], [0.9, 73, 57, 179], [1.0, 75, 58, 203]] as const;

/** X'Y'Z' codes of cinema white, 48 cd/m2 at x 0.314, y 0.351 (SMPTE ST 428-1:2006, RP 431-2:2011). */
export const cinemaWhite = { luminanceCdM2: 48, xy: [0.314, 0.351], codes: [3794, 3960, 3890] } as const;

/** ACEScct below its break: slope and offset of the line (Academy S-2016-001). */
export const acescctLine = { slope: 10.5402377416545, offset: 0.0729055341958355 } as const;

/** Density above base of a printing-density code (common practice): 0.002 a code from 95. */
export const printingDensityRows = [
  [95, 0],
  [445, 0.7],
  [685, 1.18],
] as const;
