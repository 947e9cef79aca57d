import { expect, it } from 'vitest';
import type { FrameWork } from '../../../src/cli/engine/frame-job.js';
import { startFramePool } from '../../../src/cli/engine/frame-pool.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { planeBytes, type PlaneLayout } from '../../../src/picture/planes.js';
import { seededRandom } from '../../../src/maths/random.js';

const layout: PlaneLayout = {
  ...{ width: 90, height: 51, kind: 'luma-chroma', bits: 8, across: 2, down: 2 },
  ...{ siteAcross: 'first', siteDown: 'midway' },
};
const coding = { layout, matrix: 'bt601', range: 'legal' } as const;
const warmer = (run: Float64Array) => run.forEach((value, i) => (run[i] = value * [1, 0.9, 0.7][i % 3]));
const work: FrameWork = {
  lut: sampleLattice(warmer, 9),
  way: { from: coding, to: coding, takes: 'full', gives: 'full', flip: 'h' },
};
const random = seededRandom(1965);
const frames = Array.from({ length: 12 }, () =>
  new Uint8Array(planeBytes(layout)).map(() => 40 + 150 * random()),
);

/** Frames in, frames out, as they come; more than there are places. */
async function through(pool: ReturnType<typeof startFramePool>): Promise<Uint8Array[]> {
  const done = await Promise.all(
    frames.map(async (frame) => {
      const slot = await pool.takeSlot();
      slot.source.set(frame);
      await pool.apply(slot);
      const result = slot.target.slice();
      pool.freeSlot(slot);
      return result;
    }),
  );
  await pool.close();
  return done;
}

it('a movie’s frames through compiled loops and the plain way: the same but for rounding', async () => {
  const loops = await through(startFramePool(3, work));
  const plain = await through(startFramePool(2, work, () => undefined));
  loops.forEach((frame, n) =>
    frame.forEach((code, i) => {
      if (Math.abs(code - plain[n][i]) > 1) expect.fail(`frame ${n}, byte ${i}: ${code}, ${plain[n][i]}`);
    }),
  );
  expect(loops[0]).not.toEqual(frames[0]);
});
