import { describe, expect, it } from 'vitest';
import { type Box, makeCanvas } from '../../src/picture/canvas.js';
import { palette } from '../../src/preview/palette.js';
import { drawLabel } from '../../src/preview/reel-report/labels.js';
import { fonts } from './fonts.js';

const room = { x: 10, y: 24, width: 380, height: 150 };
const style = { faces: fonts.regular, sizePx: 15 };
const ringAt = (x: number, y: number): Box => ({ x: x - 7, y: y - 7, width: 14, height: 14 });

/** Rings with their labels, set one after the other. @returns the boxes of the labels */
function labelled(rings: readonly Box[], names: readonly string[]) {
  const canvas = makeCanvas(400, 200, palette.surround);
  const taken = [...rings];
  rings.forEach((ring, i) => drawLabel(canvas, style, names[i], ring, room, taken));
  return { canvas, labels: taken.slice(rings.length), taken };
}

const apart = (a: Box, b: Box) =>
  a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;

describe('labels', () => {
  it.each([
    ['near one another at an edge', [ringAt(24, 100), ringAt(40, 98)]],
    ['on one another', [ringAt(200, 100), ringAt(200, 100), ringAt(203, 101)]],
    ['in the corners', [ringAt(20, 34), ringAt(380, 34), ringAt(20, 164), ringAt(380, 164)]],
  ])('of things %s cover neither these nor each other, and stay in the room', (_, rings) => {
    const { labels, taken } = labelled(rings, ['bare light', 'grey', 'unexposed film', 'clear film']);
    expect(labels).toHaveLength(rings.length);
    for (const label of labels) {
      expect(taken.every((other) => other === label || apart(label, other))).toBe(true);
      expect(label.x >= room.x && label.x + label.width <= room.x + room.width).toBe(true);
      expect(label.y >= room.y && label.y + label.height <= room.y + room.height).toBe(true);
    }
  });

  it('are left out where there is no room at all', () => {
    const { labels, canvas } = labelled([ringAt(200, 100)], ['long '.repeat(40)]);
    expect(labels).toEqual([]);
    expect(canvas).toEqual(makeCanvas(400, 200, palette.surround));
  });
});
