import Color from 'colorjs.io';
import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import { ciede2000, ciede2000Run } from '../../src/colour/difference.js';
import type { Triple } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';
import { difference } from '../tolerances.js';

const count = 3000;
const random = seededRandom(20250);
const anyLab = (): Triple => [100 * random(), 250 * random() - 125, 250 * random() - 125];
const near = ([l, a, b]: Triple): Triple => [l + random() - 0.5, a + 4 * random() - 2, b + 4 * random() - 2];

/** Pairs near each other, as differences mostly are, and pairs from anywhere. */
const pairs = Array.from({ length: count }, (_, i) => {
  const one = anyLab();
  return [one, i % 2 ? near(one) : anyLab()] as const;
});

describe('CIEDE2000 of 3000 pairs', () => {
  it('agrees with culori', () => {
    const peer = differenceCiede2000();
    for (const [one, two] of pairs) {
      const [a, b] = [one, two].map(([l, a, b]) => ({ mode: 'lab65' as const, l, a, b }));
      expect(Math.abs(ciede2000(one, two) - peer(a, b)), `${one} and ${two}`).toBeLessThan(difference);
    }
  });

  it('agrees with colorjs.io', () => {
    for (const [one, two] of pairs) {
      const [a, b] = [one, two].map((lab) => new Color('lab', [...lab]));
      expect(Math.abs(ciede2000(one, two) - a.deltaE2000(b)), `${one} and ${two}`).toBeLessThan(difference);
    }
  });

  it('is the same in runs', () => {
    const [a, b] = [0, 1].map((side) => Float64Array.from(pairs.flatMap((pair) => pair[side])));
    const out = new Float64Array(count);
    ciede2000Run(a, b, count, out);
    expect([...out]).toEqual(pairs.map(([one, two]) => ciede2000(one, two)));
  });
});
