import { describe, expect, it } from 'vitest';
import { lossPicture, widest } from '../../src/burn-in/loss-picture.js';
import { lossJudge, undo } from '../../src/lut/inverse.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { makePicture } from '../../src/picture/picture.js';
import { lookOf } from '../lut/inverse-looks.js';

const lut = sampleLattice(
  lookOf((r, g, b) => [1.25 * r, 1.25 * g, 1.25 * b]),
  17,
);
const judge = lossJudge(sampleLut(lut), sampleLut(undo(lut, { size: 17 })), 8);

/** Left half mid-grey, right half near white. */
function halves(width: number, height: number) {
  const still = makePicture(width, height, { channels: 3, bits: 8 });
  for (let i = 0; i < still.data.length; i++)
    still.data[i] = Math.floor(i / 3) % width < width / 2 ? 110 : 250;
  return still;
}

describe('loss picture', () => {
  it('marks the lost half and leaves the other as it is', () => {
    const still = halves(80, 40);
    const { picture, shares } = lossPicture(still, judge);
    expect(shares['burnt-out']).toBeCloseTo(0.5, 12);
    expect(shares.blocked + shares.folded + shares.squeezed).toBe(0);
    const changed = (from: number, to: number) => {
      let count = 0;
      for (let y = 0; y < 40; y++)
        for (let x = from; x < to; x++)
          if (picture.data[3 * (80 * y + x)] !== still.data[3 * (80 * y + x)]) count++;
      return count;
    };
    // the line around the place may lie one mark's reach outside of it
    expect(changed(0, 37)).toBe(0);
    expect(changed(40, 80)).toBeGreaterThan(300);
    expect(still.data[0]).toBe(110);
  });

  it('brings a large still down, and takes grey with alpha', () => {
    const wide = makePicture(3200, 20, { channels: 2, bits: 16 }, new Uint16Array(3200 * 40).fill(65535));
    const { picture, shares } = lossPicture(wide, judge);
    expect([picture.width, picture.height, picture.channels]).toEqual([widest, 10, 3]);
    expect(shares['burnt-out']).toBe(1);
  });
});
