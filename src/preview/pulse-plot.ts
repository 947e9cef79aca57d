import { fillBox, makeCanvas } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { palette } from './palette.js';
import { drawLine, fillDot, type Place } from './reel-report/shapes.js';
import { drawText, fitText, type TextStyle, textWidth } from './text.js';
import type { LabelFonts } from './typeface.js';

/** A value at each frame: where it stands along the panel, and how far from the middle. */
export interface PulsePoint {
  readonly at: number;
  /** Share of the mean light, 0 = the mean. */
  readonly share: number;
}

/** One panel: dots as recorded, a line as flicker alone would be. */
export interface PulsePanel {
  readonly heading: string;
  readonly dots: readonly PulsePoint[];
  readonly line: readonly PulsePoint[];
  /** The panel's ends. */
  readonly from: number;
  readonly to: number;
  /** Words below, at a place along the panel. */
  readonly ticks: readonly { readonly at: number; readonly words: string }[];
  /** Upright marks, such as jumps of the frame line. */
  readonly marks: readonly number[];
}

export interface PulsePlot {
  readonly title: string;
  readonly sentences: readonly string[];
  readonly panels: readonly PulsePanel[];
}

const width = 1200;
const margin = 36;
const axis = 76;
const panelHeight = 190;
const panelFoot = 62;

const styles = {
  title: (fonts: LabelFonts): TextStyle => ({ faces: fonts.strong, sizePx: 26 }),
  heading: (fonts: LabelFonts): TextStyle => ({ faces: fonts.strong, sizePx: 18 }),
  text: (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 18 }),
  small: (fonts: LabelFonts): TextStyle => ({ faces: fonts.regular, sizePx: 15 }),
};

/** A step of the scale that gives two or three lines on each side of the middle: 1, 2 or 5 times a power of ten. */
function scaleStep(reach: number): number {
  const power = 10 ** Math.floor(Math.log10(reach));
  return [5, 2, 1].map((n) => n * power).find((step) => reach / step >= 1.5) ?? power / 2;
}

function drawPanel(canvas: Picture, panel: PulsePanel, top: number, reach: number, fonts: LabelFonts): void {
  const small = styles.small(fonts);
  drawText(canvas, styles.heading(fonts), fitText(styles.heading(fonts), panel.heading, width - 2 * margin), {
    x: margin,
    baseline: top + 18,
    ink: palette.text,
  });
  const box = { x: margin + axis, y: top + 30, width: width - 2 * margin - axis, height: panelHeight };
  fillBox(canvas, box, palette.bed);
  const middle = box.y + box.height / 2;
  const high = (share: number) => middle - (share / reach) * (box.height / 2 - 8);
  const along = (at: number) => box.x + ((at - panel.from) / (panel.to - panel.from)) * box.width;
  const step = scaleStep(reach);
  for (let i = -Math.floor(reach / step); i * step <= reach; i++) {
    const y = Math.round(high(i * step));
    fillBox(canvas, { x: box.x, y, width: box.width, height: 1 }, palette.scaleLine);
    const words =
      i === 0 ? 'mean' : `${i > 0 ? '+' : '−'}${Number((100 * step * Math.abs(i)).toPrecision(3))} %`;
    const x = box.x - 10 - textWidth(small, words);
    drawText(canvas, small, words, { x, baseline: y + 5, ink: palette.quietText });
  }
  for (const { at, words } of panel.ticks) {
    const x = Math.min(width - margin - textWidth(small, words), along(at));
    drawText(canvas, small, words, { x, baseline: box.y + box.height + 20, ink: palette.quietText });
    fillBox(
      canvas,
      { x: Math.round(along(at)), y: box.y + box.height - 6, width: 1, height: 6 },
      palette.quietText,
    );
  }
  for (const at of panel.marks)
    fillBox(
      canvas,
      { x: Math.round(along(at)) - 1, y: box.y, width: 2, height: box.height },
      palette.blocked,
    );
  const cut = (share: number) => Math.min(reach, Math.max(-reach, share));
  const place = ({ at, share }: PulsePoint): Place => ({ x: along(at), y: high(cut(share)) });
  drawLine(canvas, panel.line.map(place), 2, palette.comparison);
  for (const dot of panel.dots) fillDot(canvas, place(dot), 2.5, palette.green, 0.85);
}

/**
 * A recording's pulse as a picture 1200 pixels wide: words on top, then its panels, all on one scale.
 * @returns 8-bit RGB, sRGB
 */
export function drawPulsePlot({ title, sentences, panels }: PulsePlot, fonts: LabelFonts): Picture {
  const head = margin + 34 + sentences.length * 26 + 14;
  const pitch = 30 + panelHeight + panelFoot;
  const canvas = makeCanvas(width, head + panels.length * pitch, palette.surround);
  const fit = (style: TextStyle, words: string) => fitText(style, words, width - 2 * margin);
  const heading = styles.title(fonts);
  drawText(canvas, heading, fit(heading, title), { x: margin, baseline: margin + 18, ink: palette.text });
  const text = styles.text(fonts);
  sentences.forEach((sentence, i) =>
    drawText(canvas, text, fit(text, sentence), {
      x: margin,
      baseline: margin + 52 + 26 * i,
      ink: palette.text,
    }),
  );
  const all = panels.flatMap(({ line, dots }) => [...line, ...dots].map(({ share }) => Math.abs(share)));
  const reach = Math.max(0.005, 1.1 * usual(all));
  panels.forEach((panel, i) => drawPanel(canvas, panel, head + i * pitch, reach, fonts));
  return canvas;
}

/** All but the wildest of the values lie below this. */
function usual(values: number[]): number {
  return values.sort((a, b) => a - b)[Math.floor(0.98 * values.length)] ?? 0;
}
