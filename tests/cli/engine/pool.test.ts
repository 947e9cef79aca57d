import { afterAll, describe, expect, it } from 'vitest';
import { loadEngine } from '../../../src/cli/engine/load-engine.js';
import { sharedSamples, startPool } from '../../../src/cli/engine/pool.js';
import type { Samples } from '../../../src/lut/apply-codes.js';
import { seededRandom } from '../../../src/maths/random.js';
import { fill, randomLattice } from '../../lut/engine/pictures.js';

const engine = loadEngine();
const seed = 19691224;
const pools = [1, 2, 5].map((threads) => startPool(threads));
afterAll(() => Promise.all(pools.map((pool) => pool.close())));

/** More than two bands, and no whole number of them. */
const pixels = 150_001;

const same = (a: Samples, b: Samples) => a.length === b.length && a.every((code, i) => code === b[i]);

describe.each(pools.map((pool) => [pool.threads, pool] as const))('a pool of %i', (_, pool) => {
  const random = seededRandom(seed);
  const pictures: Samples[] = [
    fill(new Uint8Array(3 * pixels), () => Math.floor(256 * random())),
    fill(new Uint16Array(4 * pixels), () => Math.floor(65536 * random())),
    fill(new Float32Array(3 * pixels), () => random()),
  ];

  it.each(pictures.map((source) => [source.constructor.name, source] as const))(
    'gives the same as one thread: %s',
    async (_name, source) => {
      const channels = source.length === 4 * pixels ? 4 : 3;
      const lattice = randomLattice(33, random);
      const [alone, together] = [source.slice(), sharedSamples(source)];
      engine.apply(lattice, source, alone, channels);
      await pool.apply(lattice, source, together, channels);
      expect(same(together, alone)).toBe(true);
    },
  );

  it('does several pictures asked for at once, each through its own LUT', async () => {
    const source = pictures[0];
    const lattices = [randomLattice(17, random), randomLattice(65, random), randomLattice(4, random)];
    const targets = lattices.map(() => source.slice());
    await Promise.all(lattices.map((lattice, i) => pool.apply(lattice, source, targets[i], 3)));
    lattices.forEach((lattice, i) => {
      const alone = source.slice();
      engine.apply(lattice, source, alone, 3);
      expect(same(targets[i], alone)).toBe(true);
    });
  });

  it('does what the compiled loops do not do, and refuses what does not fit, and goes on', async () => {
    const lattice = randomLattice(130, random);
    const [alone, together] = [new Uint8Array(300), new Uint8Array(300)];
    engine.apply(lattice, pictures[0].subarray(0, 300), alone, 3);
    await pool.apply(lattice, pictures[0].subarray(0, 300), together, 3);
    expect(together).toEqual(alone);
    expect(() => pool.apply(lattice, new Uint8Array(3), new Uint8Array(6), 3)).toThrow(RangeError);
    await pool.apply(lattice, new Uint8Array(0), new Uint8Array(0), 3);
  });
});
