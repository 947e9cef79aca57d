/**
 * Log curves of the Common LUT Format with [light, signal] pairs: S-2014-006 (CLF v3.0), SMPTE ST 2136-1:2024,
 * equations; the figures, of 8 decimals or more, are those of two programs, one of them OpenColorIO 2.1.2.
 */
export const cameraLogChecks: readonly {
  readonly name: string;
  readonly parameters: Readonly<Record<string, number>>;
  readonly decimals: number;
  readonly rows: readonly (readonly [number, number])[];
}[] = [
  {
    name: 'ACEScct as a camera curve',
    parameters: {
      base: 2,
      logSideSlope: 0.0570776255707763,
      logSideOffset: 0.554794520547945,
      linSideSlope: 1,
      linSideOffset: 0,
      linSideBreak: 0.0078125,
    },
    decimals: 10,
    rows: [
      [-0.01, -0.0324968432], [0, 0.0729055342], [0.0078125, 0.1552511416], [0.18, 0.4135884025],
      [1, 0.5547945205],
    ],
  },
  {
    name: 'a made-up camera',
    parameters: {
      base: 10,
      logSideSlope: 0.25,
      logSideOffset: 0.4,
      linSideSlope: 5.5,
      linSideOffset: 0.05,
      linSideBreak: 0.01,
    },
    decimals: 10,
    rows: [
      [-0.01, 0.0415535319], [0, 0.0984254283], [0.01, 0.1552973248], [0.18, 0.4042583348],
      [1, 0.5860732458], [8, 0.8109864782],
    ],
  },
  {
    name: 'printing density as a pure log',
    parameters: {
      base: 10,
      logSideSlope: 0.29325513196,
      logSideOffset: 0.66959921799,
      linSideSlope: 0.98920224838,
      linSideOffset: 0.01079775162,
    },
    decimals: 8,
    rows: [[0, 0.09286413], [0.18, 0.45731961], [1, 0.66959922]],
  },
];
