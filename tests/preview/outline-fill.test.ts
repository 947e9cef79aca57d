import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { fillOutline, flatten } from '../../src/preview/outline-fill.js';
import type { PathCommand } from '../../src/preview/typeface.js';
import { fonts } from './fonts.js';

function polygon(...points: [number, number][]): PathCommand[] {
  return [...points.map(([x, y], i) => ({ type: i === 0 ? 'M' : 'L', x, y }) as PathCommand), { type: 'Z' }];
}

const area = (commands: readonly PathCommand[]) => fillOutline(commands).shares.reduce((a, b) => a + b, 0);

/** Sums of a few hundred terms near 1: rounding only. */
const rounding = 1e-9;

describe('fillOutline', () => {
  it('covers whole pixels wholly and broken ones by their area', () => {
    const { x, y, width, shares } = fillOutline(polygon([1.5, 2], [3.25, 2], [3.25, 3.5], [1.5, 3.5]));
    expect([x, y]).toEqual([1, 2]);
    expect([...shares.slice(0, 3)]).toEqual([0.5, 1, 0.25]);
    expect([...shares.slice(width, width + 3)]).toEqual([0.25, 0.5, 0.125]);
  });

  it('keeps the area of a triangle (half of base times height), either way round and below zero', () => {
    const corners: [number, number][] = [
      [-3.3, -2.7],
      [8.1, 0.4],
      [1.2, 9.9],
    ];
    const exact = Math.abs((8.1 + 3.3) * (9.9 + 2.7) - (1.2 + 3.3) * (0.4 + 2.7)) / 2;
    expect(Math.abs(area(polygon(...corners)) - exact)).toBeLessThan(rounding);
    expect(Math.abs(area(polygon(...corners.reverse())) - exact)).toBeLessThan(rounding);
  });

  it('cuts a hole where the inner part runs the other way', () => {
    const outer = polygon([0, 0], [10, 0], [10, 10], [0, 10]);
    const hole = polygon([3, 3], [3, 7], [7, 7], [7, 3]);
    expect(area([...outer, ...hole])).toBeCloseTo(100 - 16, 9);
  });

  it('does not cover twice where parts overlap', () => {
    const square = (at: number) => polygon([at, 0], [at + 6, 0], [at + 6, 6], [at, 6]);
    expect(area([...square(0), ...square(3)])).toBeCloseTo(54, 9);
  });

  it('follows quadratic curves: a parabola over base b and height h covers 2/3 b h (Archimedes)', () => {
    const arch: PathCommand[] = [
      { type: 'M', x: 0, y: 12 },
      { type: 'Q', x1: 8, y1: -12, x: 16, y: 12 },
      { type: 'Z' },
    ];
    // Eight chords instead of the curve miss 1/64 of the area, since each halving leaves a quarter of the rest.
    const chords = (2 / 3) * 16 * 12 * (1 - 1 / 64);
    expect(area(arch)).toBeCloseTo(chords, 9);
  });

  it('follows cubic curves: a quarter circle of four such arcs comes within 1 % of pi r^2', () => {
    const [r, k] = [9, 9 * 0.5522847498]; // common approximation of a circle by cubic curves
    const circle: PathCommand[] = [
      { type: 'M', x: r, y: 0 },
      { type: 'C', x1: r, y1: k, x2: k, y2: r, x: 0, y: r },
      { type: 'C', x1: -k, y1: r, x2: -r, y2: k, x: -r, y: 0 },
      { type: 'C', x1: -r, y1: -k, x2: -k, y2: -r, x: 0, y: -r },
      { type: 'C', x1: k, y1: -r, x2: r, y2: -k, x: r, y: 0 },
    ];
    expect(Math.abs(area(circle) / (Math.PI * r * r) - 1)).toBeLessThan(0.01);
  });

  it('agrees with counting points inside, for random convex outlines (seed 5)', () => {
    const random = seededRandom(5);
    const steps = 32;
    for (let n = 0; n < 20; n++) {
      const angles = Array.from({ length: 5 }, () => random() * 2 * Math.PI).sort((a, b) => a - b);
      const centre = [random() * 3, random() * 3];
      const corners = angles.map((t): [number, number] => [
        centre[0] + 5 * Math.cos(t),
        centre[1] + 5 * Math.sin(t),
      ]);
      const inside = (px: number, py: number) =>
        corners.every(([ax, ay], i) => {
          const [bx, by] = corners[(i + 1) % corners.length];
          return (bx - ax) * (py - ay) - (by - ay) * (px - ax) >= 0;
        });
      const map = fillOutline(polygon(...corners));
      map.shares.forEach((share, i) => {
        let hits = 0;
        for (let k = 0; k < steps * steps; k++) {
          const u = map.x + (i % map.width) + ((k % steps) + 0.5) / steps;
          const v = map.y + Math.floor(i / map.width) + (Math.floor(k / steps) + 0.5) / steps;
          if (inside(u, v)) hits++;
        }
        // An edge through a pixel can miscount about one row of its points, a corner two.
        expect(Math.abs(share - hits / (steps * steps))).toBeLessThan(2 / steps);
      });
    }
  });

  it('fills nothing for nothing: no outline, a point, a line', () => {
    for (const commands of [[], polygon([1, 1]), polygon([1, 1], [5, 5])]) expect(area(commands)).toBe(0);
    expect(flatten([])).toEqual([]);
  });

  it('gives shares from 0 to 1 for every letter of the label font', () => {
    for (let code = 33; code < 256; code++) {
      const character = String.fromCharCode(code);
      const { shares } = fillOutline(fonts.regular[0].charToGlyph(character).getPath(0.3, 17, 18).commands);
      expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
    }
  });
});
