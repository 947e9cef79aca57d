/** Published matrices of the primaries, linear RGB to XYZ with white Y = 1, row by row, by the names of the registry. */
export const rgbToXyzChecks: Readonly<
  Record<string, { readonly source: string; readonly decimals: number; readonly matrix: readonly number[] }>
> = {
  bt709: {
    source: 'ITU-R BT.709-6, computed to 10 decimals by two programs',
    decimals: 10,
    matrix: [0.4123907993, 0.3575843394, 0.1804807884, 0.2126390059, 0.7151686788, 0.0721923154, 0.0193308187, 0.1191947798, 0.9505321522],
  },
  bt2020: {
    source: 'ITU-R BT.2020-2, computed to 10 decimals by two programs',
    decimals: 10,
    matrix: [0.6369580483, 0.1446169036, 0.1688809752, 0.262700212, 0.6779980715, 0.0593017165, 0.0, 0.028072693, 1.0609850577],
  },
  'p3-d65': {
    source: 'SMPTE EG 432-1:2010, computed to 10 decimals by two programs',
    decimals: 10,
    matrix: [0.4865709486, 0.2656676932, 0.1982172852, 0.2289745641, 0.6917385218, 0.0792869141, 0.0, 0.0451133819, 1.0439443689],
  },
  'aces-ap1': {
    source: 'Academy S-2014-004, 10 decimals',
    decimals: 10,
    matrix: [0.6624541811, 0.1340042065, 0.156187687, 0.2722287168, 0.6740817658, 0.0536895174, -0.0055746495, 0.0040607335, 1.0103391003],
  },
};

/** The rounded matrices in print. */
export const srgbMatrices = {
  source: 'IEC 61966-2-1:1999, 4 decimals',
  rgbToXyz: [0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505],
  xyzToRgb: [3.2406, -1.5372, -0.4986, -0.9689, 1.8758, 0.0415, 0.0557, -0.204, 1.057],
} as const;

export const bt709ToBt2020 = {
  source: 'ITU-R BT.2087-0, 4 decimals',
  matrix: [0.6274, 0.3293, 0.0433, 0.0691, 0.9195, 0.0114, 0.0164, 0.088, 0.8956],
} as const;

/** The primaries of ACES AP0 and the published way from AP1 to them (SMPTE ST 2065-1, Academy S-2014-004; 10 decimals). */
export const acesAp0 = {
  red: [0.7347, 0.2653],
  green: [0, 1],
  blue: [0.0001, -0.077],
  white: [0.32168, 0.33767],
  rgbToXyz: [0.9525523959, 0.0, 9.36786e-05, 0.3439664498, 0.7281660966, -0.0721325464, 0.0, 0.0, 1.0088251844],
  fromAp1: [0.6954522414, 0.1406786965, 0.1638690622, 0.0447945634, 0.8596711185, 0.0955343182, -0.0055258826, 0.0040252103, 1.0015006723],
} as const;

/** P3 with the white of cinema projection (SMPTE RP 431-2:2011; matrix of 10 decimals by two programs). */
export const p3Cinema = {
  red: [0.68, 0.32],
  green: [0.265, 0.69],
  blue: [0.15, 0.06],
  white: [0.314, 0.351],
  rgbToXyz: [0.4451698156, 0.2771344092, 0.1722826698, 0.2094916779, 0.7215952542, 0.0689130679, 0.0, 0.0470605601, 0.9073553944],
} as const;

/** Luma weights: the row of Y, rounded to 4 decimals (ITU-R BT.709-6, BT.2020-2). */
export const lumaWeights = { bt709: [0.2126, 0.7152, 0.0722], bt2020: [0.2627, 0.678, 0.0593] } as const;
