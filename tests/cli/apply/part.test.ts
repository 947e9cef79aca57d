import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { partOf, readPart } from '../../../src/cli/commands/apply/part.js';

describe('a part of a reel', () => {
  it('is every tenth frame from the third', () => {
    const frames = Array.from({ length: 25 }, (_, i) => i + 1);
    expect(partOf(frames, readPart('3/10'))).toEqual([3, 13, 23]);
    expect(partOf(frames, readPart('1/1'))).toEqual(frames);
    expect(partOf(frames.slice(0, 2), readPart('3/10'))).toEqual([]);
  });

  it('shares no frame with another, and all together are the reel', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 40 }), (count, of) => {
        const frames = Array.from({ length: count }, (_, i) => i);
        const parts = Array.from({ length: of }, (_, k) => partOf(frames, { which: k + 1, of }));
        expect(parts.flat().sort((a, b) => a - b)).toEqual(frames);
      }),
      { seed: 19640412 },
    );
  });

  it.each(['0/4', '5/4', '1/0', '3', '1/2/3', '-1/4', '1.5/4', ' 1/4', '', 'a/b', '1/9999999999'])(
    '"%s" is none',
    (text) => expect(() => readPart(text)).toThrow('cannot be used'),
  );
});
