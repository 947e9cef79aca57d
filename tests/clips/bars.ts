import type { RawFrames } from './tools.js';

/** Red, green and blue of each bar, 0 to 1: the 75 % bars, full primaries, greys and colours between. */
export const bars: readonly (readonly [number, number, number])[] = [
  [1, 1, 1],
  [0.75, 0.75, 0],
  [0, 0.75, 0.75],
  [0, 0.75, 0],
  [0.75, 0, 0.75],
  [0.75, 0, 0],
  [0, 0, 0.75],
  [0, 0, 0],
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [0.5, 0.5, 0.5],
  [0.1, 0.2, 0.3],
  [0.9, 0.7, 0.6],
];

export const barWidth = 16;
export const barsWidth = barWidth * bars.length;
export const barsHeight = 32;

/** Weights of red and blue in luma: ITU-R BT.601-7, 2.5.1; BT.709-6, 3.2; BT.2020-2, table 4. */
const weights = { bt601: [0.299, 0.114], bt709: [0.2126, 0.0722], bt2020: [0.2627, 0.0593] } as const;

export type BarsMatrix = keyof typeof weights;

/** Patterns of the planes: luma pixels for one colour difference, across and down. */
const patterns = { '420': [2, 2], '422': [2, 1], '444': [1, 1] } as const;

export interface BarsKind {
  readonly pattern: keyof typeof patterns;
  readonly bits: 8 | 10;
  readonly range: 'full' | 'legal';
  readonly matrix: BarsMatrix;
}

/** Y', CB and CR of a bar, as the three standards print their equations. */
export function lumaChromaOf([r, g, b]: readonly number[], matrix: BarsMatrix): [number, number, number] {
  const [red, blue] = weights[matrix];
  const luma = red * r + (1 - red - blue) * g + blue * b;
  return [luma, (b - luma) / (2 - 2 * blue), (r - luma) / (2 - 2 * red)];
}

/** Codes: BT.601-7, 2.5.3, and BT.709-6, 3.4, for legal range (219 and 224 steps); ITU-T H.273, 8.3, for full. */
export function codesOf([luma, cb, cr]: readonly number[], bits: number, range: 'full' | 'legal'): number[] {
  const step = 2 ** (bits - 8);
  const most = 2 ** bits - 1;
  const codes =
    range === 'legal'
      ? [(219 * luma + 16) * step, (224 * cb + 128) * step, (224 * cr + 128) * step]
      : [most * luma, most * cb + 2 ** (bits - 1), most * cr + 2 ** (bits - 1)];
  return codes.map((code) => Math.min(most, Math.max(0, Math.round(code))));
}

/** Codes in bytes up to 8 bits, else in two. */
export function codesIn(bits: number, length: number, code: (i: number) => number): Uint8Array {
  const codes = bits === 8 ? new Uint8Array(length) : new Uint16Array(length);
  for (let i = 0; i < length; i++) codes[i] = code(i);
  return new Uint8Array(codes.buffer);
}

/** The bars side by side, in planes. */
export function drawBars({ pattern, bits, range, matrix }: BarsKind): RawFrames {
  const [across, down] = patterns[pattern];
  const columns = bars.map((bar) => codesOf(lumaChromaOf(bar, matrix), bits, range));
  const plane = (channel: number, width: number, height: number, perBar: number) =>
    codesIn(bits, width * height, (i) => columns[Math.floor((i % width) / perBar)][channel]);
  const planes = [
    plane(0, barsWidth, barsHeight, barWidth),
    ...[1, 2].map((channel) => plane(channel, barsWidth / across, barsHeight / down, barWidth / across)),
  ];
  return {
    format: `yuv${pattern}p${bits === 8 ? '' : '10le'}`,
    width: barsWidth,
    height: barsHeight,
    bytes: Buffer.concat(planes),
  };
}

/** ffmpeg's options that tag a file so. */
export function tagsOf({ range, matrix }: Pick<BarsKind, 'range' | 'matrix'>): string[] {
  const space = { bt601: 'smpte170m', bt709: 'bt709', bt2020: 'bt2020nc' }[matrix];
  return ['-colorspace', space, '-color_range', range === 'full' ? 'pc' : 'tv'];
}

/** Codes at the middle of each bar of a picture, as shares of full scale. */
export function barColours(picture: { width: number; height: number; data: ArrayLike<number> }): number[][] {
  const row = picture.width * (picture.height >> 1);
  return bars.map((_, bar) => {
    const at = 3 * (row + barWidth * bar + barWidth / 2);
    return [0, 1, 2].map((channel) => picture.data[at + channel] / 65535);
  });
}
