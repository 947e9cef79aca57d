import { describe, expect, it } from 'vitest';
import { frameLayer } from '../../../src/demo/drawing/layer.js';
import {
  addEllipsoid,
  addLimb,
  makeRelief,
  type Material,
  type Relief,
} from '../../../src/demo/drawing/relief.js';
import { lightRelief } from '../../../src/demo/drawing/relief-colour.js';

const made: Material = { surface: { sun: [1, 1, 1], sky: [1, 1, 1], bounce: [1, 1, 1] }, softness: 0 };
const other: Material = { surface: { sun: [1, 0.1, 0.1], sky: [1, 0.1, 0.1], bounce: [1, 0.1, 0.1] } };
const stand = { x: 0, y: 0.5, size: 0.2 };
/** Grid points and heights are single precision. */
const single = 1e-5;

const relief = () => makeRelief(frameLayer(160, 120), stand, [-2, -2, 2, 2])!;

function pointAt(of: Relief, x: number, y: number): number {
  return Math.round((of.y0 - y) / of.step) * of.width + Math.round((x - of.x0) / of.step);
}

describe('a relief', () => {
  it('of a ball has the ball’s heights and slopes', () => {
    const ball = relief();
    addEllipsoid(ball, made, { centre: [0, 0, 0.5], radii: [1, 1, 1] });
    let points = 0;
    for (let row = 0, at = 0; row < ball.height; row++)
      for (let column = 0; column < ball.width; column++, at++) {
        const [x, y] = [ball.x0 + column * ball.step, ball.y0 - row * ball.step];
        const inside = x * x + y * y < 1;
        expect(ball.material[at] >= 0).toBe(inside);
        if (!inside) continue;
        points++;
        expect(Math.abs(ball.z[at] - 0.5 - Math.sqrt(1 - x * x - y * y))).toBeLessThan(single);
        expect(Math.abs(ball.nx[at] - x) + Math.abs(ball.ny[at] - y)).toBeLessThan(single);
      }
    expect(points).toBeGreaterThan(1000);
  });

  it('of a limb of no length is a ball, a turned ellipsoid one with its axes changed', () => {
    const [ball, limb, upright, turned] = [relief(), relief(), relief(), relief()];
    addEllipsoid(ball, made, { centre: [0, 0, 0], radii: [0.8, 0.8, 0.8] });
    addLimb(limb, made, { from: [0, 0, 0], to: [0, 0, 0], radii: [0.8, 0.8] });
    addEllipsoid(upright, made, { centre: [0, 0, 0], radii: [0.5, 1, 0.7] });
    addEllipsoid(turned, made, { centre: [0, 0, 0], radii: [1, 0.5, 0.7], turn: Math.PI / 2 });
    const differs = (a: Relief, b: Relief) => a.z.some((z, i) => Math.abs(z - b.z[i]) > single);
    expect(differs(ball, limb)).toBe(false);
    expect(differs(upright, turned)).toBe(false);
    expect(differs(ball, upright)).toBe(true);
  });

  it('shows the nearer of two solids, in whatever order they come', () => {
    for (const order of [0, 1]) {
      const two = relief();
      const near = () => addEllipsoid(two, other, { centre: [0, 0, 1], radii: [0.5, 0.5, 0.5] });
      const far = () => addEllipsoid(two, made, { centre: [0, 0, 0], radii: [1, 1, 1] });
      for (const add of order ? [near, far] : [far, near]) add();
      expect(two.materials[two.material[pointAt(two, 0, 0)]]).toBe(other);
      expect(two.materials[two.material[pointAt(two, 0.8, 0)]]).toBe(made);
    }
  });

  it('cuts a limb off at its hem', () => {
    const cut = relief();
    addLimb(cut, made, { from: [0, 1, 0], to: [0, -1, 0], radii: [0.3, 0.3], hem: -0.5 });
    expect(cut.material[pointAt(cut, 0, -0.45)]).toBeGreaterThanOrEqual(0);
    expect(cut.material[pointAt(cut, 0, -0.55)]).toBe(-1);
  });

  it('is lit on the side of the sun and covers its outline', () => {
    const ball = relief();
    addEllipsoid(ball, made, { centre: [0, 0, 0], radii: [1, 1, 1] });
    const part = lightRelief(ball, { toSun: [-1, 0, 0], sun: 1, sky: 0, bounce: 0 });
    const at = (x: number) => {
      const column = Math.round((stand.x + x * stand.size - part.frameX) * part.scale - part.left);
      return Math.round((stand.y - part.frameY) * part.scale - part.top) * part.width + column;
    };
    expect(part.light[3 * at(-0.9)]).toBeGreaterThan(0.8);
    expect(part.light[3 * at(0.5)]).toBe(0);
    expect(part.cover[at(0.5)]).toBe(1);
    // The area of the disc, a hundred and more pixels of it on the edge.
    const covered = part.cover.reduce((sum, cover) => sum + cover, 0);
    expect(covered / (Math.PI * (stand.size * part.scale) ** 2)).toBeCloseTo(1, 2);
  });

  it('draws strokes on their own material only', () => {
    const two = relief();
    addEllipsoid(two, made, { centre: [-0.8, 0, 0], radii: [0.6, 0.6, 0.6] });
    addEllipsoid(two, other, { centre: [0.8, 0, 0], radii: [0.6, 0.6, 0.6] });
    const light = { toSun: [0, 0, 1], sun: 1, sky: 0, bounce: 0 } as const;
    const black = { surface: { sun: [0, 0, 0], sky: [0, 0, 0], bounce: [0, 0, 0] } } as const;
    const part = lightRelief(two, light, [{ ...black, on: made, bounds: [-2, -2, 2, 2], cover: () => 1 }]);
    const sums = [0, 0];
    for (let i = 0; i < part.cover.length; i++)
      sums[i % part.width < part.width / 2 ? 0 : 1] += part.light[3 * i];
    expect(sums[0]).toBe(0);
    expect(sums[1]).toBeGreaterThan(100);
  });
});
