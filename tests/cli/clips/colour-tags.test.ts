import { existsSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { coloursTagged, tagsAgainst } from '../../../src/cli/colour-tags.js';
import type { ClipColour } from '../../../src/clips/clip-colour.js';
import { openWorkbench } from './workbench.js';

const { at, gatelight, ffmpeg } = openWorkbench();

const colour = (primaries?: string, transfer?: string): ClipColour => ({
  matrix: 'bt709',
  range: 'legal',
  primaries,
  transfer,
  assumed: undefined,
});

describe('tags of colour', () => {
  it.each([
    // ITU-T H.273, tables 2 and 3, by the names that ffmpeg gives the code points.
    ['bt709', 'bt709', { primaries: 'bt709', encoding: 'bt709' }],
    ['bt2020', 'bt2020-10', { primaries: 'bt2020', encoding: 'bt709' }],
    ['bt2020', 'arib-std-b67', { primaries: 'bt2020', encoding: 'hlg' }],
    ['smpte432', 'smpte2084', { primaries: 'p3-d65', encoding: 'pq' }],
    ['bt709', 'iec61966-2-1', { primaries: 'bt709', encoding: 'srgb' }],
    ['bt470m', 'bt470bg', {}],
    [undefined, undefined, {}],
  ] as const)('%s %s', (primaries, transfer, taken) => {
    expect(coloursTagged(colour(primaries, transfer))).toEqual(taken);
  });

  it('speak only where they say otherwise, and a tag could have said so', () => {
    const srgb = { encoding: 'srgb', primaries: 'bt709' } as const;
    expect(tagsAgainst(colour(), srgb)).toBeUndefined();
    expect(tagsAgainst(colour('bt709', 'iec61966-2-1'), srgb)).toBeUndefined();
    expect(tagsAgainst(colour('bt709', 'bt709'), { ...srgb, encoding: 'bt1886' })).toBeUndefined();
    expect(tagsAgainst(colour('bt709', 'bt709'), { ...srgb, encoding: 'acescct' })).toBeUndefined();
    expect(tagsAgainst(colour('bt2020', 'arib-std-b67'), srgb)).toBe(
      'its tags say transfer function hlg and primaries bt2020: taken as srgb and bt709',
    );
    expect(tagsAgainst(colour('bt470m', 'iec61966-2-1'), srgb)).toBe(
      'its tags say primaries bt470m: taken as bt709',
    );
  });
});

describe('a movie tagged HLG and BT.2020', () => {
  beforeAll(() => {
    const tags = ['-color_primaries', 'bt2020', '-color_trc', 'arib-std-b67', '-colorspace', 'bt2020nc'];
    ffmpeg('-i', at('bars.mkv'), '-c:v', 'ffv1', ...tags, '-color_range', 'tv', at('wide.mkv'));
  });
  const cameraIn = (look: string): unknown =>
    (JSON.parse(readFileSync(at(look), 'utf8')) as { camera: unknown }).camera;

  it('is measured as such, and said so', () => {
    const { status, stderr } = gatelight(['measure', 'wide.mkv@f0', '-o', 'wide.json']);
    expect(status, stderr).toBe(0);
    expect(stderr).toContain('wide.mkv: taken as hlg and bt2020, as its tags say; --encoding says otherwise');
    expect(cameraIn('wide.json')).toMatchObject({ encoding: 'hlg', primaries: 'bt2020' });
  });

  it('is measured as --encoding or --like says', () => {
    const asked = gatelight(['measure', 'wide.mkv@f0', '--encoding', 'bt709', '-o', 'asked.json']);
    expect(asked.stderr).toContain('wide.mkv: taken as bt2020, as its tags say.');
    expect(cameraIn('asked.json')).toMatchObject({ encoding: 'bt709', primaries: 'bt2020' });
    const like = gatelight(['measure', 'wide.mkv@f0', '--like', 'asked.json', '-o', 'like.json']);
    expect(like.stderr).toContain('its tags say transfer function hlg: taken as bt709');
    expect(cameraIn('like.json')).toMatchObject({ encoding: 'bt709', primaries: 'bt2020' });
  });

  it('is told where a look takes it otherwise', () => {
    const words = 'its tags say transfer function hlg and primaries bt2020: taken as srgb and bt709';
    for (const command of [
      ['preview', 'warm.cube', 'wide.mkv@f0', '-o', 'seen.png'],
      ['apply', 'warm.cube', 'wide.mkv@f0', '-o', 'still.png'],
      ['apply', 'warm.cube', 'wide.mkv', '-o', 'out.mkv'],
    ]) {
      const { status, stderr } = gatelight(command);
      expect(status, stderr).toBe(0);
      expect(stderr).toContain(words);
    }
    expect(existsSync(at('out.mkv'))).toBe(true);
  });
});
