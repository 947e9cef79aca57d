import { describe, expect, it } from 'vitest';
import { verify } from '../../src/burn-in/verify.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';
import { losslessLooks, lookOf } from '../lut/inverse-looks.js';
import { asItIs, drawnScene, type Scene, shoot } from './scene.js';

const lut = sampleLattice(losslessLooks['projected warm'], 33);
const look = sampleLut(lut);
const size = { width: 288, height: 216, noise: 0.6, bits: 8, dx: 0, dy: 0 } as const;
const scene = drawnScene(7);
const pair = (of: Scene, device = look, second: Scene = of) =>
  [shoot(of, asItIs, { ...size, seed: 1 }), shoot(second, device, { ...size, seed: 2 })] as const;

const flat = (code: number): Picture =>
  makePicture(200, 150, { channels: 3, bits: 8 }, new Uint8Array(90000).fill(code));

describe('thin evidence', () => {
  it('is not claimed where there is none', () => {
    expect(verify(...pair(scene), lut).doubts).toEqual([]);
  });

  it('one colour: judged, but no cause is named', () => {
    const verdict = verify(flat(128), flat(128), lut);
    expect(verdict.holds).toBe(false);
    expect(verdict.doubts).toEqual(expect.arrayContaining(['few-colours', 'no-texture']));
    expect(verdict.cause).toBeUndefined();
  });

  it('a frame that is grey of one level but for its grain', () => {
    const grain: Scene = (x, y) => {
      const value = 0.5 + 0.02 * Math.sin(1.3 * x + 0.4 * y) * Math.sin(0.7 * y);
      return [value, value, value];
    };
    const { holds, cause, doubts } = verify(...pair(grain, asItIs), lut);
    expect([holds, cause, doubts]).toEqual([false, undefined, ['few-colours']]);
  });

  it.each([
    ['black', 0],
    ['white', 255],
  ])('a frame that is %s all over tells nothing', (name, code) => {
    expect(() => verify(flat(code), flat(code), lut)).toThrow(new RegExp(`${name} all over`));
  });

  it('a look that hardly changes the frame', () => {
    const faint = sampleLattice(
      lookOf((r, g, b) => [r, g, 0.999 * b]),
      17,
    );
    expect(verify(...pair(scene, asItIs), faint)).toMatchObject({ holds: true, doubts: ['weak-look'] });
  });

  it('a part of the frame that moved', () => {
    const other = drawnScene(8);
    const moved: Scene = (x, y) => (x > 190 ? other(x, y) : scene(x, y));
    expect(verify(...pair(scene, look, moved), lut).doubts).toEqual(['moved']);
  });

  it.each([11, 12, 13, 14, 15, 16, 17, 18])('two frames (%d) are two, also within one gate', (seed) => {
    const gated =
      (of: Scene): Scene =>
      (x, y) =>
        Math.min(x - 20, 268 - x, y - 20, 196 - y) > 0 ? of(x, y) : [0.05, 0.05, 0.05];
    const [a, b] = [drawnScene(seed), drawnScene(100 + seed)];
    expect(() => verify(...pair(a, look, b), lut)).toThrow(/same frame/);
    expect(() => verify(...pair(gated(a), look, gated(b)), lut)).toThrow(/same frame/);
  });
});

describe('what else a verdict tells', () => {
  it('noise between the stills, both of them together', () => {
    const { noise } = verify(...pair(scene, asItIs), lut);
    // two stills of 0.6 each, and the rounding of each to codes (1/12 of a code squared)
    expect(noise).toBeGreaterThan(0.8 * Math.sqrt(2 * (0.36 + 1 / 12)));
    expect(noise).toBeLessThan(1.15 * Math.sqrt(2 * (0.36 + 1 / 12)));
  });

  it('stills in the wrong order', () => {
    const [plain, burnt] = pair(scene);
    expect(verify(burnt, plain, lut).cause?.cause).toBe('stills-swapped');
  });

  it('two files that do the same cannot be told apart, and it says so', () => {
    const bright = sampleLattice(
      lookOf((r, g, b) => [0.8 * r, 0.8 * g, 0.8 * b]),
      33,
    );
    const others = [{ name: 'nothing.cube', lut: sampleLattice(() => {}, 5) }];
    const verdict = verify(...pair(scene, asItIs), bright, { others });
    expect(verdict.cause?.cause).toBe('not-applied');
    expect(verdict.ambiguous).toBe(true);
    expect(verify(...pair(scene, asItIs), bright).ambiguous).toBe(false);
  });
});
