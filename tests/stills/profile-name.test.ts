import { describe, expect, it } from 'vitest';
import { profileName } from '../../src/stills/profile-name.js';
import { namedProfile, someProfile } from './fixtures.js';

describe('profileName', () => {
  it.each([2, 4] as const)('reads version %i', (version) => {
    expect(profileName(namedProfile('Harbour scanner', version))).toBe('Harbour scanner');
  });

  it('reads other alphabets and longer names, on one line', () => {
    expect(profileName(namedProfile('Hafen: Größe Ж', 4))).toBe('Hafen: Größe Ж');
    expect(profileName(namedProfile('two\nlines\u0007', 4))).toBe('two lines');
    expect(profileName(namedProfile('x'.repeat(500), 2))).toBe('x'.repeat(80));
  });

  it('reads one that libvips writes', async () => {
    expect(profileName(await someProfile())).toBe('sP3C');
  });

  it('has no name for what is broken, empty or not a profile', () => {
    const good = namedProfile('Harbour scanner', 4);
    for (const bytes of [new Uint8Array(0), new Uint8Array(128), new Uint8Array(500), namedProfile('', 2)])
      expect(profileName(bytes)).toBeUndefined();
    for (let length = 0; length < good.length; length++)
      expect(profileName(good.subarray(0, length))).toBeUndefined();
  });

  it('does not read round for ever when it claims to have billions of entries', () => {
    const liar = new Uint8Array(400);
    liar.fill(255, 128, 132);
    expect(profileName(liar)).toBeUndefined();
  });
});
