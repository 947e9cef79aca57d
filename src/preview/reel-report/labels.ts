import { type Box, fillBox } from '../../picture/canvas.js';
import type { Picture } from '../../picture/picture.js';
import { palette } from '../palette.js';
import { drawText, type TextStyle, textWidth } from '../text.js';

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const within = (a: Box, b: Box): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height;

/** From a thing to its label, pixels. */
const gap = 3;

/** Places for a label around a thing, the best first; above and below it is moved sideways into the room. */
function placesAround(thing: Box, { width, height }: Pick<Box, 'width' | 'height'>, room: Box): Box[] {
  const middle = thing.x + (thing.width - width) / 2;
  const x = Math.max(room.x, Math.min(room.x + room.width - width, middle));
  const [above, below] = [thing.y - gap - height, thing.y + thing.height + gap];
  const beside = thing.y + (thing.height - height) / 2;
  return [
    { x, y: above },
    { x, y: below },
    { x: thing.x + thing.width + gap, y: beside },
    { x: thing.x - gap - width, y: beside },
    { x, y: above - height },
    { x, y: below + height },
  ].map((corner) => ({ x: Math.round(corner.x), y: Math.round(corner.y), width, height }));
}

/**
 * Writes a name at a thing, on a darkened bed, where it covers no other.
 * @param room where labels may stand
 * @param taken what they must not cover: the things, and the labels before, to which this one is added
 */
export function drawLabel(
  canvas: Picture,
  style: TextStyle,
  name: string,
  thing: Box,
  room: Box,
  taken: Box[],
): void {
  const size = { width: Math.ceil(textWidth(style, name)) + 6, height: style.sizePx + 3 };
  const places = placesAround(thing, size, room).filter((place) => within(place, room));
  const bed = places.find((place) => !taken.some((other) => overlap(place, other))) ?? places[0];
  if (bed === undefined) return;
  taken.push(bed);
  fillBox(canvas, bed, palette.bed, 0.75);
  drawText(canvas, style, name, { x: bed.x + 3, baseline: bed.y + style.sizePx - 1, ink: palette.text });
}
