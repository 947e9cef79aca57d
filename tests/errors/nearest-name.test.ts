import { describe, expect, it } from 'vitest';
import { nearestName } from '../../src/errors/nearest-name.js';

const lamps = ['xenon', 'tungsten-halogen', 'tungsten-halogen-low', 'incandescent'];

describe('the name that was meant', () => {
  it.each([
    ['tungsten-hallogen', 'tungsten-halogen'],
    ['tungsten-halogen-lwo', 'tungsten-halogen-low'],
    ['Xenon', 'xenon'],
    ['xneon', 'xenon'],
    ['incandesent', 'incandescent'],
    ['xenon', 'xenon'],
  ])('of %s is %s', (given, meant) => expect(nearestName(given, lamps)).toBe(meant));

  it.each(['mercury', '', 'zzzzz', 'x'.repeat(101), 'x'.repeat(1e6)])('there is none near %.20s', (given) =>
    expect(nearestName(given, lamps)).toBeUndefined(),
  );

  it('is undefined among no names', () => expect(nearestName('xenon', [])).toBeUndefined());

  it('takes a swap of neighbours for one change, so the nearer of two is found', () =>
    expect(nearestName('sgrb', ['srgb', 'sgr'])).toBe('srgb'));
});
