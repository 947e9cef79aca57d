export const scopeNames = ['waveform', 'vectorscope', 'histogram'] as const;
export type ScopeName = (typeof scopeNames)[number];

/** Pixels each is drawn in: beside the waveform stands its scale. */
export const scopeSizes: Readonly<Record<ScopeName, { width: number; height: number }>> = {
  waveform: { width: 240, height: 160 },
  vectorscope: { width: 280, height: 160 },
  histogram: { width: 280, height: 160 },
};
