import { describe, expect, it } from 'vitest';
import { matrices } from '../../src/colour/luma-chroma.js';
import { applyToCodes } from '../../src/lut/apply-codes.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';
import { frameToRgb, rgbToFrame } from '../../src/picture/planar-codec.js';
import { planeBytes, type PlaneLayout, planesOf, type Siting } from '../../src/picture/planes.js';

// The whole way of a frame through a LUT, in doubles with nothing rounded, written plainly from the definitions.

type Grid = number[][];

const held = (line: number[], i: number): number => line[Math.min(line.length - 1, Math.max(0, i))];
const transposed = (grid: Grid): Grid => grid[0].map((_, x) => grid.map((line) => line[x]));

/** Where the pixels of a pair lie from the colour difference they share, in units of its grid. */
const places = { first: [0, 1 / 2], midway: [-1 / 4, 1 / 4] } as const;

/** Linear interpolation between samples, ends held. */
const spread = (line: number[], length: number, siting: Siting): number[] =>
  Array.from({ length }, (_, x) => {
    const at = (x >> 1) + places[siting][x & 1];
    const below = Math.floor(at);
    return (1 - (at - below)) * held(line, below) + (at - below) * held(line, below + 1);
  });

/** The triangle that reaches two pixels either way from where the colour difference lies, ends held. */
const gather = (line: number[], siting: Siting): number[] =>
  Array.from({ length: (line.length + 1) >> 1 }, (_, i) => {
    const centre = 2 * i + (siting === 'first' ? 0 : 1 / 2);
    const near = [-1, 0, 1, 2].map((k) => 2 * i + k);
    const weight = (x: number) => Math.max(0, 1 - Math.abs(x - centre) / 2) / 2;
    return near.reduce((sum, x) => sum + weight(x) * held(line, x), 0);
  });

const lut = sampleLattice((run) => run.forEach((value, i) => (run[i] = value ** [0.8, 1, 1.2][i % 3])), 17);

const { red, blue } = matrices.bt709;
const green = 1 - red - blue;

/** Legal codes of 10 bits through the LUT. */
function exactly({ width, height, across, down, siteAcross, siteDown }: PlaneLayout, planes: Grid[]): Grid[] {
  const wide = (grid: Grid) => (across === 1 ? grid : grid.map((line) => spread(line, width, siteAcross)));
  const tall = (grid: Grid) =>
    down === 1 ? grid : transposed(transposed(grid).map((line) => spread(line, height, siteDown)));
  const [luma, cb, cr] = [planes[0], tall(wide(planes[1])), tall(wide(planes[2]))];
  const through = luma.map((line, y) =>
    line.map((code, x) => {
      const [l, b, r] = [(code - 64) / 876, (cb[y][x] - 512) / 896, (cr[y][x] - 512) / 896];
      const [R, B] = [l + 2 * (1 - red) * r, l + 2 * (1 - blue) * b];
      const run = Float64Array.of(R, (l - red * R - blue * B) / green, B);
      sampleLut(lut)(run, 1);
      return run;
    }),
  );
  const of = (code: (R: number, G: number, B: number) => number) =>
    through.map((line) => line.map(([R, G, B]) => code(R, G, B)));
  const lumaOf = (R: number, G: number, B: number) => red * R + green * G + blue * B;
  const narrow = (grid: Grid) => (across === 1 ? grid : grid.map((line) => gather(line, siteAcross)));
  const short = (grid: Grid) =>
    down === 1 ? grid : transposed(transposed(grid).map((line) => gather(line, siteDown)));
  return [
    of((R, G, B) => 64 + 876 * lumaOf(R, G, B)),
    short(narrow(of((R, G, B) => 512 + (896 * (B - lumaOf(R, G, B))) / (2 * (1 - blue))))),
    short(narrow(of((R, G, B) => 512 + (896 * (R - lumaOf(R, G, B))) / (2 * (1 - red))))),
  ];
}

/** Half a code, and what red, green and blue of 16 bits round away on the way: hundredths of a code of 10 bits. */
const rounding = 0.5 + 0.03;

describe('a frame through a LUT, beside the same in doubles', () => {
  const base = { kind: 'luma-chroma', bits: 10, width: 22, height: 12 } as const;
  const layouts = (
    [
      [1, 1],
      [2, 1],
      [2, 2],
    ] as const
  ).flatMap(([across, down]) =>
    (['first', 'midway'] as const).map((site): PlaneLayout => ({
      ...{ ...base, across, down, siteAcross: site, siteDown: 'midway' },
    })),
  );

  it.each(layouts)('not half a code off: %o', (layout) => {
    const random = seededRandom(1923);
    const frame = new Uint8Array(planeBytes(layout));
    const planes = planesOf(layout, frame);
    // Colours that lie within red, green and blue: nothing is cut.
    planes.forEach((plane, i) =>
      plane.forEach((_, at) => (plane[at] = i === 0 ? 420 + 180 * random() : 480 + 64 * random())),
    );
    const coding = { layout, matrix: 'bt709', range: 'legal' } as const;
    const rgb = new Uint16Array(3 * layout.width * layout.height);
    frameToRgb(coding, frame, rgb);
    applyToCodes(lut, rgb, rgb, 3);
    const out = new Uint8Array(frame.length);
    rgbToFrame(coding, rgb, out);
    const counts = [layout.width, layout.width / layout.across, layout.width / layout.across];
    const grids = planes.map((plane, i) =>
      Array.from({ length: plane.length / counts[i] }, (_, y) => [
        ...plane.subarray(y * counts[i], (y + 1) * counts[i]),
      ]),
    );
    exactly(layout, grids).forEach((grid, i) =>
      planesOf(layout, out)[i].forEach((code, at) =>
        expect(Math.abs(code - grid.flat()[at])).toBeLessThan(rounding),
      ),
    );
  });
});
