import { expect, it } from 'vitest';
import { previewLook } from '../../src/jobs/preview-look.js';
import { screenSignals } from '../../src/jobs/signal.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { makePicture } from '../../src/picture/picture.js';
import { fonts } from '../preview/fonts.js';

const picture = makePicture(16, 12, { channels: 3, bits: 8 }, new Uint8Array(3 * 16 * 12).fill(120));
const identity = sampleLattice(() => {}, 2);
const seen = (name: string, signals = screenSignals) =>
  previewLook(identity, signals, { name, picture }, 'Nothing asked', fonts).picture;

it('a preview names its still above the picture before, whatever folder it lies in', () => {
  const [here, there, other] = [seen('tram.png'), seen('box 2/tram.png'), seen('regatta.png')];
  expect(Buffer.from(there.data).equals(Buffer.from(here.data))).toBe(true);
  const differing = [...other.data.keys()].filter((i) => other.data[i] !== here.data[i]);
  const columns = differing.map((i) => Math.floor(i / 3) % other.width);
  expect(differing.length).toBeGreaterThan(0);
  expect(Math.max(...columns)).toBeLessThan(other.width / 2);
});

it('a preview says what a still is taken as, where that is no ordinary picture', () => {
  const hlg = { ...screenSignals.input, encoding: 'hlg' } as const;
  const [plain, taken] = [screenSignals, { input: hlg, output: hlg }].map((signals) =>
    seen('a.png', signals),
  );
  // The strip above the picture before, right of so short a name.
  const inks = ({ width, data }: typeof plain) => {
    const strip = (row: number) => data.slice(3 * (row * width + 160), 3 * (row * width + 700));
    return Array.from({ length: 36 }, (_, i) => strip(44 + i)).some((row) => new Set(row).size > 1);
  };
  expect([inks(plain), inks(taken)]).toEqual([false, true]);
});
