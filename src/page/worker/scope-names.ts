export const scopeNames = ['waveform', 'vectorscope', 'histogram'] as const;
export type ScopeName = (typeof scopeNames)[number];
