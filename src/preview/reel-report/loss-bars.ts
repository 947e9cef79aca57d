import { fillBox, type Ink } from '../../picture/canvas.js';
import type { Picture } from '../../picture/picture.js';
import { palette } from '../palette.js';
import { drawText, type TextStyle } from '../text.js';
import type { LabelFonts } from '../typeface.js';

/** One bar: a share of the scale with what it may as well be. */
export interface LossBar {
  readonly name: string;
  readonly ink: BarInk;
  /** Where nothing stands, as a share of the track's length; the start when left out. */
  readonly zero?: number;
  /** Shares of the track's length, 0..1; what lies outside is cut. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What it says, such as `53 % gone (46 to 60)`. */
  readonly words: string;
}

/** Dyes and lights, muted: OKLCh lightness about 0.72, chroma about 0.1, at hues 200, 345, 100, 25, 150, 260. */
const inks = {
  cyan: [82, 180, 190],
  magenta: [205, 128, 178],
  yellow: [191, 170, 85],
  red: [213, 130, 122],
  green: [118, 182, 128],
  blue: [122, 163, 220],
} as const satisfies Record<string, Ink>;

export type BarInk = keyof typeof inks;

export const barHeight = 40;
const nameWidth = 122;
const barWidth = 300;

/** A bar in a track, to either side of where nothing stands; its uncertainty as a thin line with ends, its words at the right. */
export function lossBar(canvas: Picture, x: number, y: number, bar: LossBar, fonts: LabelFonts): void {
  const style: TextStyle = { faces: fonts.regular, sizePx: 18 };
  const baseline = y + 24;
  drawText(canvas, style, bar.name, { x, baseline, ink: palette.text });
  const track = { x: x + nameWidth, y: y + 8, width: barWidth, height: 22 };
  const along = (share: number) => Math.round(barWidth * Math.min(1, Math.max(0, share)));
  fillBox(canvas, track, palette.bed);
  const [zero, value] = [along(bar.zero ?? 0), along(bar.value)];
  const from = Math.min(zero, value);
  fillBox(canvas, { ...track, x: track.x + from, width: Math.max(zero, value) - from }, inks[bar.ink]);
  if (zero > 0) fillBox(canvas, { ...track, x: track.x + zero, width: 1 }, palette.quietText);
  const [low, high] = [track.x + along(bar.low), track.x + along(bar.high)];
  fillBox(canvas, { x: low, y: y + 18, width: Math.max(2, high - low), height: 2 }, palette.comparison);
  for (const end of [low, high])
    fillBox(canvas, { x: Math.max(track.x, end - 1), y: y + 12, width: 2, height: 14 }, palette.comparison);
  drawText(canvas, style, bar.words, { x: track.x + barWidth + 18, baseline, ink: palette.text });
}
