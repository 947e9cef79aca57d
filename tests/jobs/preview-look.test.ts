import { expect, it } from 'vitest';
import { previewLook } from '../../src/jobs/preview-look.js';
import { screenSignals } from '../../src/jobs/signal.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { makePicture } from '../../src/picture/picture.js';
import { fonts } from '../preview/fonts.js';

const picture = makePicture(16, 12, { channels: 3, bits: 8 }, new Uint8Array(3 * 16 * 12).fill(120));
const identity = sampleLattice(() => {}, 2);
const seen = (name: string) =>
  previewLook(identity, screenSignals, { name, picture }, 'Nothing asked', fonts).picture;

it('a preview names its still above the picture before, whatever folder it lies in', () => {
  const [here, there, other] = [seen('tram.png'), seen('box 2/tram.png'), seen('regatta.png')];
  expect(there.data).toEqual(here.data);
  const differing = [...other.data.keys()].filter((i) => other.data[i] !== here.data[i]);
  const columns = differing.map((i) => Math.floor(i / 3) % other.width);
  expect(differing.length).toBeGreaterThan(0);
  expect(Math.max(...columns)).toBeLessThan(other.width / 2);
});
