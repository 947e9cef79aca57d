import type { ReelEntry } from '../../src/files/reel-log.js';

/** A record with every field, and words that are hard on a line-based file. */
export const fullEntry: ReelEntry = {
  version: 1,
  reel: 'Harbour fête, "reel 3"',
  recordedAt: '2026-03-01T19:30:00+01:00',
  gauge: 'super8',
  stockNotes: 'blue-shifted,\nleader torn \u2028 🎞',
  lamp: '12 V 100 W, switch at half',
  shutter: '1/50 s, 3 blades, 16 2/3 fps',
  look: { file: 'looks/attic.json', sha256: 'a'.repeat(64) },
  cube: { file: '-odd name.cube', sha256: 'b'.repeat(64) },
  stills: [{ file: 'still 1.png', sha256: 'c'.repeat(64) }],
  verify: { holds: false, mean: 3.25, p95: 7.5, cause: 'applied twice' },
  notes: '=1+1',
};

export const plainEntry = (reel: string): ReelEntry => ({
  version: 1,
  reel,
  recordedAt: '2026-03-01T19:30:00Z',
});
