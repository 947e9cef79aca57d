/** A width of film: what is needed to count its frames and to frame its picture. */
export interface Gauge {
  readonly title: string;
  /** Frames in one foot (304.8 mm) of film. */
  readonly framesPerFoot: number;
  /** The part of a frame meant to be projected: width and height in mm. */
  readonly pictureMm: readonly [number, number];
  /** Speeds at which film of this gauge was usually shot, frames a second; the first is the likeliest. */
  readonly usualFps: readonly number[];
  readonly source: string;
}

/**
 * Frames a foot follow from the perforation pitch (3.81, 4.234 and 7.62 mm) and are common practice; so are the speeds.
 * Pictures: Super 8 after SMPTE 154 (quoted), 16 mm after SMPTE 233 (0.380 x 0.284 in, from memory), 8 mm 0.172 x
 * 0.129 in (from memory; a collectors' table has 4.3 x 3.3).
 */
export const gauges = {
  '8mm': {
    title: '8 mm',
    framesPerFoot: 80,
    pictureMm: [4.37, 3.28],
    usualFps: [16, 18],
    source: 'pitch 0.150 in, from memory',
  },
  super8: {
    title: 'Super 8',
    framesPerFoot: 72,
    pictureMm: [5.31, 4.01],
    usualFps: [18, 24],
    source: 'pitch 4.234 mm, SMPTE 149-2004',
  },
  '16mm': {
    title: '16 mm',
    framesPerFoot: 40,
    pictureMm: [9.65, 7.21],
    usualFps: [24, 16],
    source: 'pitch 0.3000 in, from memory',
  },
} as const satisfies Record<string, Gauge>;

export type GaugeName = keyof typeof gauges;

export const metresPerFoot = 0.3048;
