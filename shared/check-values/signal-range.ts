/** Signal ranges (ITU-R BT.709-6; ITU-R BT.2100-2, table 9). */
export const legalCodes = [
  { bits: 8, black: 16, white: 235 },
  { bits: 10, black: 64, white: 940 },
  { bits: 12, black: 256, white: 3760 },
] as const;

/** Of 10 bits, as shares: [legal signal, share of the full code range], 8 decimals, by arithmetic. */
export const legalShares = [
  [0, 0.06256109],
  [1, 0.91886608],
] as const;

/** Of 10 bits: [code, legal signal], 8 decimals, by arithmetic. 1019 is the highest code that carries video. */
export const legalSignals = [
  [0, -0.07305936],
  [1023, 1.09474886],
  [1019, 1.09018265],
] as const;
