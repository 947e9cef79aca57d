import { describe, expect, it } from 'vitest';
import { lossMarks, widest } from '../../src/burn-in/loss-marks.js';
import { lossJudge, undo } from '../../src/lut/inverse.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { makePicture } from '../../src/picture/picture.js';
import { lookOf } from '../lut/inverse-looks.js';

const lut = sampleLattice(
  lookOf((r, g, b) => [1.25 * r, 1.25 * g, 1.25 * b]),
  17,
);
const judge = lossJudge(sampleLut(lut), sampleLut(undo(lut, { size: 17 })), { bits: 8 });

/** Left half mid-grey, right half near white. */
function halves(width: number, height: number) {
  const still = makePicture(width, height, { channels: 3, bits: 8 });
  for (let i = 0; i < still.data.length; i++)
    still.data[i] = Math.floor(i / 3) % width < width / 2 ? 110 : 250;
  return still;
}

describe('marks of what is lost', () => {
  it('cover the lost half and nothing else', () => {
    const still = halves(80, 40);
    const [mark, ...more] = lossMarks(still, judge);
    expect(more).toEqual([]);
    expect(mark).toMatchObject({ loss: 'burnt-out', share: 0.5 });
    for (let i = 0; i < 80 * 40; i++) expect(mark.mask.data[i]).toBe(i % 80 < 40 ? 0 : 255);
    expect(still.data[0]).toBe(110);
  });

  it('take a large grey still with alpha, brought down', () => {
    const wide = makePicture(3200, 20, { channels: 2, bits: 16 }, new Uint16Array(3200 * 40).fill(65535));
    const [mark] = lossMarks(wide, judge);
    expect([mark.mask.width, mark.mask.height, mark.mask.channels]).toEqual([widest, 10, 1]);
    expect(mark.share).toBe(1);
  });

  it('leave out what cannot be seen', () => {
    const still = makePicture(
      2,
      1,
      { channels: 4, bits: 8 },
      Uint8Array.of(250, 250, 250, 0, 90, 90, 90, 255),
    );
    expect(lossMarks(still, judge)).toEqual([]);
  });
});
