import { describe, expect, it } from 'vitest';
import type { Picture } from '../../src/picture/picture.js';
import { drawHeadroom } from '../../src/preview/headroom-plot.js';
import { palette } from '../../src/preview/palette.js';
import { drawStopsMap, stopsLegend } from '../../src/preview/stops-map.js';
import { drawWhitePlot } from '../../src/preview/white-plot.js';
import { fonts } from './fonts.js';

const at = ({ width, data }: Picture, x: number, y: number) =>
  [...data.subarray(3 * (y * width + x), 3 * (y * width + x) + 3)].join();

/** Places of one ink, as the mean of x and y, and how many there are. */
function middleOf(picture: Picture, ink: readonly number[], within = (_x: number, _y: number) => true) {
  let [count, x, y] = [0, 0, 0];
  for (let i = 0; i < picture.width * picture.height; i++) {
    const [column, row] = [i % picture.width, Math.floor(i / picture.width)];
    if (at(picture, column, row) !== ink.join() || !within(column, row)) continue;
    [count, x, y] = [count + 1, x + column, y + row];
  }
  return { count, x: x / count, y: y / count };
}

describe('a map of stops', () => {
  const corners = ['-1', '-2', '-3', '-4'] as const;
  const hotSpot = { across: 0.5, down: 0.5 };
  const size = { width: 400, height: 300 };
  const bright = palette.difference[4].join();

  it('is darker where there is less light, by the legend, and rings the brightest place', () => {
    // one stop from the left to the right: the shades change where the legend says
    const across = 20;
    const stops = Float64Array.from({ length: 20 * 15 }, (_, i) => -((i % across) + 0.5) / across);
    const map = drawStopsMap({ stops, across, hotSpot: { across: 0.02, down: 0.5 }, corners }, size, fonts);
    const row = [...Array(400).keys()].map((x) => at(map, x, 200));
    const shades = stopsLegend.map(({ bed }) => bed?.join());
    expect(row.map((shade) => shades.indexOf(shade)).every((i, x, all) => x === 0 || i >= all[x - 1])).toBe(
      true,
    );
    for (const [shade, stop] of [0.1, 0.25, 0.5].entries())
      expect(Math.abs(row.lastIndexOf(shades[shade]!) - 400 * stop)).toBeLessThanOrEqual(1);
    expect(middleOf(map, palette.bed, (x, y) => x < 30 && Math.abs(y - 150) < 16).count).toBeGreaterThan(50);
  });

  it.each([
    [1, 1],
    [1, 3],
    [2, 1],
  ])('takes a field of %d x %d parts', (across, down) => {
    const stops = new Float64Array(across * down);
    const map = drawStopsMap({ stops, across, hotSpot, corners }, size, fonts);
    expect(at(map, 100, 100)).toBe(bright);
  });
});

describe('a plot of the white', () => {
  const unseen = { mired: 5, duv: 0.002 };
  const dotOf = (miredShift: number, duvShift: number) => {
    const plot = drawWhitePlot({ miredShift, duvShift, unseen }, fonts);
    // the dot is the only thing of its ink that is so thick
    const thick = (x: number, y: number) =>
      [-4, 4].every((by) => at(plot, x + by, y) === at(plot, x, y) && at(plot, x, y + by) === at(plot, x, y));
    return middleOf(plot, palette.comparison, (x, y) => x > 8 && y > 8 && x < 731 && y < 391 && thick(x, y));
  };

  it('has the light to the right where it is too warm, above where it is too green', () => {
    const [warm, cool, green, pink] = [dotOf(30, 0), dotOf(-30, 0), dotOf(0, 0.012), dotOf(0, -0.012)];
    expect([warm.x > 400, cool.x < 340, green.y < 170, pink.y > 230]).toEqual([true, true, true, true]);
    for (const { y } of [warm, cool]) expect(Math.abs(y - 200)).toBeLessThan(2);
    for (const { x } of [green, pink]) expect(Math.abs(x - 370)).toBeLessThan(2);
  });

  it('has it in the middle where the two agree, and within the plot however far it lies', () => {
    // middles of pixels: half a pixel before the lines
    const even = dotOf(0, 0);
    expect([even.x, even.y]).toEqual([369.5, 199.5]);
    for (const [mired, duv] of [
      [400, 0],
      [-900, 0.3],
      [0, -2],
    ])
      expect(dotOf(mired, duv).count).toBeGreaterThan(40);
  });
});

describe('words in a plot of the white', () => {
  const unseen = { mired: 5, duv: 0.002 };
  const edges: ((x: number, y: number) => boolean)[] = [
    (x) => x < 140,
    (x) => x > 600,
    (_, y) => y < 40,
    (_, y) => y > 370,
  ];

  it.each([...Array(24).keys()].map((i) => 15 * i))('stay clear of a light %d degrees round', (degrees) => {
    const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const plotOf = (far: number) =>
      drawWhitePlot({ miredShift: 5 * far * x, duvShift: 0.002 * far * y, unseen }, fonts);
    // With the light near the middle there are words alone at the edges.
    const [words, plot] = [plotOf(0.1), plotOf(12)];
    for (const edge of edges) {
      const inked: [number, number][] = [];
      for (let row = 0; row < words.height; row++)
        for (let column = 0; column < words.width; column++)
          if (edge(column, row) && at(words, column, row) === palette.quietText.join())
            inked.push([column, row]);
      const [columns, rows] = [inked.map(([column]) => column), inked.map(([, row]) => row)];
      expect(inked.length).toBeGreaterThan(20);
      for (let row = Math.min(...rows) - 2; row <= Math.max(...rows) + 2; row++)
        for (let column = Math.min(...columns) - 2; column <= Math.max(...columns) + 2; column++)
          if (at(plot, column, row) !== at(words, column, row))
            expect.fail(`something is drawn over words at ${column}, ${row}`);
    }
  });
});

describe('the name of a light that agrees', () => {
  it.each([
    [0, 0],
    [4, -0.0015],
    [-4, 0.0015],
  ])('stands clear of the box in the middle: %d mired, %d Duv', (miredShift, duvShift) => {
    const plot = drawWhitePlot({ miredShift, duvShift, unseen: { mired: 5, duv: 0.002 } }, fonts);
    const boxed = (ink: readonly number[], left: number, right: number) =>
      middleOf(plot, ink, (x, y) => x >= left && x <= right && y > 170 && y < 230).count;
    // The box reaches 20 pixels to either side of 370, its line one more.
    expect(boxed(palette.quietText, 347, 393)).toBeGreaterThan(100);
    expect(boxed(palette.text, 347, 393)).toBe(0);
    expect(middleOf(plot, palette.text).count).toBeGreaterThan(20);
  });
});

describe('a plot of headroom', () => {
  const row = (stops: number | undefined) => {
    const plot = drawHeadroom([{ name: 'a', ink: palette.green, stops, words: '' }], fonts);
    return [...Array(740).keys()].map((x) => at(plot, x, 20));
  };
  const length = (stops: number | undefined) =>
    row(stops).filter((ink) => ink === palette.green.join()).length;

  it('has a bar that ends as far before the line as there is room, and goes on behind it where it is over', () => {
    const end = row(0).indexOf(palette.comparison.join());
    const [none, one, two] = [0, 1, 2].map((stops) => row(stops).lastIndexOf(palette.green.join()));
    expect(end - none).toBe(1);
    expect(Math.abs(one - two - (none - one))).toBeLessThanOrEqual(1);
    expect(row(-1)).toContain(palette.burntOutBed.join());
    expect(row(1)).not.toContain(palette.burntOutBed.join());
  });

  it('has no bar where nothing is known, and stays in its track', () => {
    expect(length(undefined)).toBe(0);
    expect(length(99)).toBeGreaterThan(0);
    expect(length(-99)).toBe(length(-1));
  });
});
