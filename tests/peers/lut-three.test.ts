import { FloatType, type Data3DTexture } from 'three';
import { LUTCubeLoader } from 'three/examples/jsm/loaders/LUTCubeLoader.js';
import { describe, expect, it } from 'vitest';
import { writeCube } from '../../src/lut/formats/cube/write.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { seededRandom } from '../../src/maths/random.js';

/** Half of the last of six decimals, and single precision of values up to 2, which the other reader keeps. */
const rounding = 0.5e-6 + 2 ** -24 * 2;

/** The other reader's table: r g b and a fourth value for each node. */
function readByPeer(text: string) {
  const { title, size, texture3D, domainMin, domainMax } = new LUTCubeLoader().setType(FloatType).parse(text);
  const { data } = (texture3D as Data3DTexture).image;
  return {
    title,
    size,
    data: data as unknown as Float32Array,
    domain: [domainMin.toArray(), domainMax.toArray()],
  };
}

describe('a .cube file of ours, read by three', () => {
  const random = seededRandom(20000101);
  const noise = (run: Float64Array) => void run.forEach((_, i) => (run[i] = 3 * random() - 1));

  it.each([2, 17, 33, 65])('is the same lattice of %i nodes a side', (size) => {
    const lattice = sampleLattice(noise, size);
    const peer = readByPeer(writeCube(lattice, { title: 'Regatta', comments: [['lamp', '3200 K']] }));
    expect([peer.title, peer.size]).toEqual(['Regatta', size]);
    expect(peer.data.length).toBe(4 * size ** 3);
    let worst = 0;
    lattice.values.forEach((value, i) => {
      const theirs = peer.data[4 * Math.floor(i / 3) + (i % 3)];
      worst = Math.max(worst, Math.abs(theirs - value));
    });
    process.stdout.write(`three, ${size} nodes a side: largest difference ${worst}\n`);
    expect(worst).toBeLessThanOrEqual(rounding);
  });

  it('has the same domain', () => {
    const lattice = sampleLattice(noise, 3, [-0.5, 0, 0.25], [1.5, 2, 1]);
    expect(readByPeer(writeCube(lattice)).domain).toEqual([lattice.domainMin, lattice.domainMax]);
  });

  it('is the same when plain', () => {
    const lattice = sampleLattice(noise, 5);
    expect(readByPeer(writeCube(lattice, { plain: true })).data).toEqual(readByPeer(writeCube(lattice)).data);
  });
});
