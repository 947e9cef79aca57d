/**
 * Published input and output pairs of the encodings, by the names of the registry.
 * Each table says how its numbers are scaled and how many decimals stand in print.
 */
export interface CheckTable {
  readonly source: string;
  /** `decode`: rows are [signal, light]; `encode`: rows are [light, signal]. */
  readonly direction: 'decode' | 'encode';
  readonly rows: readonly (readonly [number, number])[];
  /** Decimals of the second column. */
  readonly decimals: number;
  /** What light 1 (of `decode`) and signal 1 are called in the rows; 1 unless given. */
  readonly lightUnit?: number;
  readonly signalUnit?: number;
}

export const encodingChecks: Readonly<Record<string, readonly CheckTable[]>> = {
  linear: [
    {
      source: 'the identity',
      direction: 'decode',
      decimals: 10,
      rows: [[-0.5, -0.5], [0, 0], [0.18, 0.18], [1, 1], [12, 12]],
    },
  ],
  srgb: [
    {
      source: 'IEC 61966-2-1:1999',
      direction: 'decode',
      decimals: 10,
      rows: [
        [0, 0.0], [0.02, 0.0015479876], [0.04045, 0.003130805], [0.1, 0.0100228256], [0.25, 0.0508760882],
        [0.5, 0.2140411405], [0.75, 0.522521554], [0.8, 0.6038273389], [1, 1.0],
      ],
    },
    {
      source: 'IEC 61966-2-1:1999',
      direction: 'encode',
      decimals: 10,
      rows: [[0.18, 0.4613561295], [0.2, 0.4845292045], [0.5, 0.7353569831]],
    },
  ],
  bt709: [
    {
      source: 'ITU-R BT.709-6, alpha 1.099, beta 0.018',
      direction: 'encode',
      decimals: 8,
      rows: [
        [0, 0.0], [0.01, 0.045], [0.02, 0.08999973], [0.05, 0.18645273], [0.1, 0.29093991],
        [0.18, 0.40900773], [0.2, 0.43367362], [0.5, 0.70551509], [0.9, 0.9491099], [1, 1.0],
      ],
    },
  ],
  bt1886: [
    {
      source: 'ITU-R BT.1886 (2011), white 100 cd/m2, black 0',
      direction: 'decode',
      decimals: 7,
      lightUnit: 100,
      rows: [
        [0, 0.0], [0.1, 0.3981072], [0.25, 3.5896824], [0.5, 18.9464571], [0.75, 50.1356941],
        [0.9, 77.6572528], [1, 100.0],
      ],
    },
  ],
  'gamma-2.2': [
    {
      source: 'the power 2.2, by arithmetic',
      direction: 'decode',
      decimals: 8,
      rows: [[0.1, 0.00630957], [0.25, 0.04736614], [0.5, 0.21763764], [0.75, 0.53104923], [0.9, 0.79311017]],
    },
  ],
  'gamma-2.4': [
    {
      source: 'the power 2.4, by arithmetic',
      direction: 'decode',
      decimals: 8,
      rows: [[0.1, 0.00398107], [0.25, 0.03589682], [0.5, 0.18946457], [0.75, 0.50135694], [0.9, 0.77657253]],
    },
  ],
  'gamma-2.6': [
    {
      source: 'the power 2.6 (SMPTE ST 428-1), by arithmetic',
      direction: 'decode',
      decimals: 8,
      rows: [[0.1, 0.00251189], [0.25, 0.02720471], [0.5, 0.16493849], [0.75, 0.47332483], [0.9, 0.76037972]],
    },
    {
      source: 'SMPTE ST 428-1:2006: luminance in cd/m2, 52.37 at the top, to codes of 12 bits',
      direction: 'encode',
      decimals: 3,
      lightUnit: 52.37,
      signalUnit: 4095,
      rows: [[0.01, 151.998], [1.0, 893.446], [10.0, 2166.126], [24.0, 3033.324], [48.0, 3960.04]],
    },
  ],
  hlg: [
    {
      source: 'ITU-R BT.2100-2, scene light',
      direction: 'encode',
      decimals: 8,
      rows: [
        [0, 0.0], [0.01, 0.17320508], [1 / 12, 0.5], [0.18, 0.67235813], [0.25, 0.73854927],
        [0.5, 0.87164347], [1, 1.0],
      ],
    },
    {
      source: 'ITU-R BT.2100-2, scene light',
      direction: 'decode',
      decimals: 8,
      rows: [
        [0.1, 0.00333333], [0.25, 0.02083333], [0.38, 0.04813333], [0.425, 0.06020833], [0.5, 0.08333333],
        [0.75, 0.26496256], [1, 1.00000003],
      ],
    },
  ],
  pq: [
    {
      source: 'SMPTE ST 2084:2014, cd/m2',
      direction: 'encode',
      decimals: 8,
      lightUnit: 10000,
      rows: [
        [0, 7.3e-07], [0.005, 0.0150764], [0.01, 0.02148621], [0.1, 0.06233687], [1, 0.14994573],
        [10, 0.29969909], [26, 0.38003227], [48, 0.43640801], [100, 0.50807842], [203, 0.58068888],
        [400, 0.6525786], [600, 0.69629409], [1000, 0.7518271], [2000, 0.82742464], [4000, 0.90257239],
        [10000, 1.0],
      ],
    },
    {
      source: 'SMPTE ST 2084:2014, cd/m2',
      direction: 'decode',
      decimals: 5,
      lightUnit: 10000,
      rows: [
        [0.1, 0.32457], [0.25, 5.15418], [0.38, 25.99058], [0.5, 92.24571], [0.58, 201.66626],
        [0.75, 983.37786], [0.9, 3905.64465], [1, 10000.0],
      ],
    },
  ],
  acescct: [
    {
      source: 'Academy S-2016-001',
      direction: 'encode',
      decimals: 9,
      rows: [
        [-0.001, 0.062365296], [0, 0.072905534], [0.001, 0.083445772], [0.0078125, 0.155251142],
        [0.01, 0.175578985], [0.18, 0.413588402], [0.5, 0.497716895], [1, 0.554794521], [2, 0.611872146],
        [16, 0.783105023], [65504, 1.467996312],
      ],
    },
  ],
  'printing-density-log': [
    {
      source: 'common practice (black 95, white 685, film gamma 0.6), by arithmetic; light to codes of 10 bits',
      direction: 'encode',
      decimals: 4,
      signalUnit: 1023,
      rows: [
        [0, 95.0], [0.01, 179.7267], [0.02, 230.6389], [0.18, 467.838], [0.5, 596.0903], [0.9, 671.429],
        [1, 685.0], [2, 774.6037],
      ],
    },
    {
      source: 'common practice, by arithmetic; the top code',
      direction: 'decode',
      decimals: 6,
      signalUnit: 1023,
      rows: [[1023, 13.521695]],
    },
  ],
};
