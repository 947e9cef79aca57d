import { converter } from 'culori';
import type { Ink } from '../picture/canvas.js';

const toRgb = converter('rgb');

/** Bytes of an sRGB display for an OKLCh colour (Ottosson 2020): lightness 0..1, chroma 0..0.4, hue in degrees. */
function ink(l: number, c: number, h: number): Ink {
  const { r, g, b } = toRgb({ mode: 'oklch', l, c, h });
  const byte = (v: number) => Math.round(255 * Math.min(1, Math.max(0, v)));
  return [byte(r), byte(g), byte(b)];
}

/**
 * Neutral and mid-dark around the pictures, so that the eye judges them and not the page; nothing near them has a colour
 * but the traces, which are muted and of near lightness.
 */
export const palette = {
  surround: ink(0.34, 0, 0),
  bed: ink(0.22, 0, 0),
  scaleLine: ink(0.42, 0, 0),
  text: ink(0.93, 0, 0),
  quietText: ink(0.76, 0, 0),
  red: ink(0.68, 0.13, 30),
  green: ink(0.74, 0.1, 150),
  blue: ink(0.7, 0.1, 255),
  grey: ink(0.75, 0, 0),
  comparison: ink(0.95, 0, 0),
  burntOut: ink(0.36, 0.12, 345),
  burntOutBed: ink(0.95, 0.01, 90),
  // By channel, on what is burnt out: dark, where the traces are light.
  redOver: ink(0.45, 0.15, 28),
  greenOver: ink(0.42, 0.11, 150),
  blueOver: ink(0.4, 0.14, 262),
  blocked: ink(0.82, 0.09, 200),
  blockedBed: ink(0.12, 0, 0),
  // Lightness alone tells them apart; a little warmth keeps them from being taken for a picture.
  difference: [
    ink(0.22, 0, 0),
    ink(0.42, 0.03, 70),
    ink(0.6, 0.06, 70),
    ink(0.78, 0.09, 75),
    ink(0.95, 0.06, 90),
  ],
} as const satisfies Record<string, Ink | readonly Ink[]>;
