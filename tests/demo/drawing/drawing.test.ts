import { describe, expect, it } from 'vitest';
import {
  darken,
  edge,
  frameLayer,
  lay,
  lookUp,
  paint,
  paintFine,
  partLayer,
} from '../../../src/demo/drawing/layer.js';
import { cellRandom, fractalNoise, noise, smoothStep } from '../../../src/demo/drawing/noise.js';
import {
  acrossAt,
  depthOfLevel,
  depthOfSide,
  heightAt,
  project,
  type Viewpoint,
} from '../../../src/demo/drawing/perspective.js';
import {
  onCurve,
  type Point,
  toBox,
  toEllipse,
  toPolygon,
  toStroke,
} from '../../../src/demo/drawing/shapes.js';
import { seededRandom } from '../../../src/maths/random.js';

/** Layers hold single precision. */
const single = 6;
const everywhere = [-9, -9, 9, 9] as const;

describe('noise', () => {
  const random = seededRandom(31);
  const places = Array.from({ length: 4000 }, () => [400 * random() - 200, 400 * random() - 200] as const);

  it('lies within 0..1 around a half, the same at the same place', () => {
    for (const f of [noise, (x: number, y: number) => fractalNoise(x, y, 4)]) {
      const values = places.map(([x, y]) => f(x, y));
      for (const value of values) expect(value >= 0 && value <= 1).toBe(true);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      expect(Math.abs(mean - 0.5)).toBeLessThan(0.02);
      expect(places.map(([x, y]) => f(x, y))).toEqual(values);
    }
  });

  it('meets the cells and is continuous across them', () => {
    expect(noise(3, -7)).toBe(cellRandom(3, -7));
    for (const [x] of places.slice(0, 50)) {
      const border = Math.round(x);
      expect(Math.abs(noise(border - 1e-9, 0.3) - noise(border + 1e-9, 0.3))).toBeLessThan(1e-6);
    }
  });

  it('steps smoothly, either way round', () => {
    expect([smoothStep(2, 4, 1), smoothStep(2, 4, 3), smoothStep(2, 4, 9)]).toEqual([0, 0.5, 1]);
    expect([smoothStep(4, 2, 1), smoothStep(4, 2, 9)]).toEqual([1, 0]);
  });
});

describe('signed distances', () => {
  const square: Point[] = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];

  it('of a box and of a polygon of its corners agree', () => {
    const random = seededRandom(8);
    for (let i = 0; i < 300; i++) {
      const [x, y] = [4 * random() - 2, 4 * random() - 2];
      expect(toPolygon(x, y, square)).toBeCloseTo(toBox(x, y, -1, -1, 1, 1), 12);
    }
  });

  it('of a circle are exact, as an ellipse and as a stroke of no length to speak of', () => {
    expect(toEllipse(3, 4, 0, 0, 2, 2)).toBeCloseTo(3, 12);
    expect(toEllipse(0, 0, 0, 0, 2, 2)).toBe(-2);
    expect(toStroke(3, 4, [0, 0], [0, 1e-9], 2)).toBeCloseTo(3, 6);
  });

  it('of a stroke taper from end to end', () => {
    expect(toStroke(5, 2, [0, 0], [10, 0], 1, 0)).toBeCloseTo(1.5, 12);
    expect(toStroke(12, 0, [0, 0], [10, 0], 1, 0)).toBeCloseTo(2, 12);
  });

  it('a curve begins and ends at its ends', () => {
    expect(onCurve([0, 1], [5, 5], [2, 3], 0)).toEqual([0, 1]);
    expect(onCurve([0, 1], [5, 5], [2, 3], 1)).toEqual([2, 3]);
  });
});

describe('perspective', () => {
  const view: Viewpoint = { focal: 1.3, horizon: 0.4, eye: 1.6 };

  it('finds depth, side and height again', () => {
    const [X, Y, Z] = [-2.5, 0.7, 12];
    const [x, y] = project(view, X, Y, Z);
    expect(depthOfLevel(view, y, Y)).toBeCloseTo(Z, 10);
    expect(depthOfSide(view, x, X)).toBeCloseTo(Z, 10);
    expect(acrossAt(view, x, Z)).toBeCloseTo(X, 10);
    expect(heightAt(view, y, Z)).toBeCloseTo(Y, 10);
  });

  it('has no ground at the horizon and above', () => {
    expect(depthOfLevel(view, 0.4)).toBe(Infinity);
    expect(depthOfLevel(view, 0.1)).toBe(Infinity);
  });
});

describe('layers', () => {
  it('paint over what is there by cover', () => {
    const layer = frameLayer(8, 6);
    paint(layer, everywhere, (_x, _y, out) => (out.fill(0.8), 1));
    paint(layer, everywhere, (_x, _y, out) => (out.fill(0.2), 0.25));
    for (const light of layer.light) expect(light).toBeCloseTo(0.65, single);
    for (const cover of layer.cover) expect(cover).toBeCloseTo(1, single);
  });

  it('take the middle of a scene for other proportions', () => {
    const wide = frameLayer(16, 9);
    expect(wide.frameX).toBeCloseTo(-2 / 3, 12);
    expect(wide.frameY).toBeCloseTo(0.125, 12);
    const tall = frameLayer(9, 12);
    expect(tall.frameX).toBeCloseTo(-0.375, 12);
    expect(tall.frameY).toBeCloseTo(0, 12);
  });

  it('parts laid over are as if painted at once', () => {
    const shade = (x: number, y: number, out: Float64Array) => (out.fill(x + 2), edge(y - 0.5, 0.2));
    const once = frameLayer(40, 30);
    const parted = frameLayer(40, 30);
    for (const layer of [once, parted]) paint(layer, everywhere, (_x, _y, out) => (out.fill(0.5), 1));
    paint(once, [-0.3, 0.2, 0.3, 0.7], shade);
    const part = partLayer(parted, [-0.3, 0.2, 0.3, 0.7])!;
    paint(part, everywhere, shade);
    lay(parted, part);
    once.light.forEach((light, i) => expect(parted.light[i]).toBeCloseTo(light, single - 1));
  });

  it('a part outside the frame is none', () => {
    expect(partLayer(frameLayer(8, 6), [2, 0, 3, 1])).toBeUndefined();
  });

  it('look up what was painted, nothing outside', () => {
    const layer = frameLayer(40, 30);
    paint(layer, everywhere, (x, y, out) => ((out[0] = x + 1), (out[1] = y), (out[2] = 1), 1));
    const out = new Float64Array(3);
    expect(lookUp(layer, 0.123, 0.456, out)).toBeCloseTo(1, single);
    expect(out[0]).toBeCloseTo(1.123, single - 1);
    expect(out[1]).toBeCloseTo(0.456, single - 1);
    expect(lookUp(layer, 5, 0.5, out)).toBe(0);
    expect([...out]).toEqual([0, 0, 0]);
  });

  it('darken by share, the frame edges too', () => {
    const layer = frameLayer(8, 6);
    paint(layer, everywhere, (_x, _y, out) => (out.fill(1), 1));
    darken(layer, everywhere, [0.2, 0.4, 0.6], () => 0.5);
    for (let i = 0; i < layer.light.length; i += 3)
      [0.6, 0.7, 0.8].forEach((left, k) => expect(layer.light[i + k]).toBeCloseTo(left, single));
  });

  it('fine paint shows an edge inside a pixel by its share, and an even field unchanged', () => {
    const layer = frameLayer(4, 3);
    // A step between the second and third of four places across: half of each pixel is bright.
    const pixel = 1 / layer.scale;
    paintFine(layer, everywhere, (x, _y, out) => {
      const within = (x - layer.frameX) / pixel;
      out.fill(within - Math.floor(within) < 0.5 ? 1 : 0);
      return 1;
    });
    for (const light of layer.light) expect(light).toBeCloseTo(0.5, single);
    paintFine(layer, everywhere, (_x, _y, out) => (out.fill(0.3), 1));
    for (const light of layer.light) expect(light).toBeCloseTo(0.3, single);
  });
});
