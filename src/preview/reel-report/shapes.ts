import { blendPixel, type Ink } from '../../picture/canvas.js';
import type { Picture } from '../../picture/picture.js';
import { fillOutline } from '../outline-fill.js';
import type { PathCommand } from '../typeface.js';

/** A place on the page in pixels, y downwards. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Fills an outline with smooth edges. */
function fillShape(canvas: Picture, outline: readonly PathCommand[], ink: Ink, strength: number): void {
  const map = fillOutline(outline);
  map.shares.forEach((share, i) => {
    if (share > 0)
      blendPixel(canvas, map.x + (i % map.width), map.y + Math.floor(i / map.width), ink, strength * share);
  });
}

function polygon(places: readonly Place[]): PathCommand[] {
  return [
    ...places.map(({ x, y }, i) => ({ type: i === 0 ? ('M' as const) : ('L' as const), x, y })),
    { type: 'Z' },
  ];
}

/** Corners of a circle drawn as a polygon: at the sizes here no corner is seen. */
const corners = 24;

function circle({ x, y }: Place, radius: number, turn: 1 | -1): PathCommand[] {
  return polygon(
    Array.from({ length: corners }, (_, i) => {
      const angle = (turn * 2 * Math.PI * i) / corners;
      return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
    }),
  );
}

export function fillDot(canvas: Picture, at: Place, radius: number, ink: Ink, strength = 1): void {
  fillShape(canvas, circle(at, radius, 1), ink, strength);
}

export function drawRing(canvas: Picture, at: Place, radius: number, thickness: number, ink: Ink): void {
  fillShape(canvas, [...circle(at, radius, 1), ...circle(at, radius - thickness, -1)], ink, 1);
}

/** A line from place to place, `thickness` pixels wide. */
export function drawLine(canvas: Picture, places: readonly Place[], thickness: number, ink: Ink): void {
  for (let i = 1; i < places.length; i++) {
    const [from, to] = [places[i - 1], places[i]];
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) continue;
    const [across, down] = [
      ((to.y - from.y) / length) * (thickness / 2),
      ((to.x - from.x) / length) * (-thickness / 2),
    ];
    const side = (place: Place, sign: number) => ({ x: place.x + sign * across, y: place.y + sign * down });
    fillShape(canvas, polygon([side(from, 1), side(to, 1), side(to, -1), side(from, -1)]), ink, 1);
  }
}
