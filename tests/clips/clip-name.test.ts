import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { fileStem, frameName, frameNamed, namesMovie, parseFrameName } from '../../src/clips/clip-name.js';
import { InputError } from '../../src/errors/input-error.js';
import { temporaryFolder } from './tools.js';

const folder = temporaryFolder();

describe('names of frames', () => {
  it.each([
    ['reel.mkv@80.5', 80.5],
    ['reel.mkv@1:20.5', 80.5],
    ['reel.mkv@01:00:00', 3600],
    ['reel.mkv@0', 0],
  ])('%s is a time', (name, seconds) => {
    expect(parseFrameName(name)).toEqual({ clip: 'reel.mkv', place: { seconds } });
  });

  it('a number is counted from 0, and its name is read back', () => {
    expect(parseFrameName('a b@c.mkv@f2050')).toEqual({ clip: 'a b@c.mkv', place: { frame: 2050 } });
    expect(parseFrameName(frameName('-x\n.mov', 7))).toEqual({ clip: '-x\n.mov', place: { frame: 7 } });
  });

  it.each([
    'reel.mkv',
    'reel.mkv@',
    'reel.mkv@f',
    'reel.mkv@-1',
    'reel.mkv@1e3',
    '@f3',
    'still@home.png',
    'reel.mkv@f1.5',
  ])('%s names no frame', (name) => expect(parseFrameName(name)).toBeUndefined());

  it.each([
    ['day/reel.mkv@f2050', 'reel-f002050'],
    ['reel.mkv@1:20.5', 'reel-1-20.5'],
    ['a@b.c.mov@0', 'a@b.c-0'],
    ['day/still.0001.tif', 'still.0001'],
  ])('a file made of %s is called %s', (name, stem) => expect(fileStem(name)).toBe(stem));

  it('a file whose name really ends so comes first', async () => {
    const real = join(folder, 'still@f3');
    writeFileSync(real, 'x');
    expect(await frameNamed(real)).toBeUndefined();
    expect(await frameNamed(join(folder, 'other@f3'))).toEqual({
      clip: join(folder, 'other'),
      place: { frame: 3 },
    });
    mkdirSync(join(folder, 'reel.mkv@f5'));
    expect(await frameNamed(join(folder, 'reel.mkv@f5'))).toBeDefined();
  });

  it('a movie without a frame is refused with an example', async () => {
    await expect(frameNamed('Reel 3.MKV')).rejects.toThrow(InputError);
    expect(namesMovie('reel.png')).toBe(false);
  });

  it.each(['1m20', '-3', '', '1:2:3:4', 'f1.5'])(
    '"@%s" after a movie is refused with examples',
    async (place) => {
      await expect(frameNamed(`day@1/reel.mkv@${place}`)).rejects.toThrow(
        `"@${place}" is no place in a movie`,
      );
      expect(await frameNamed(`still@${place}.png`)).toBeUndefined();
      const real = join(folder, `reel.mkv@${place}`);
      writeFileSync(real, 'x');
      expect(await frameNamed(real)).toBeUndefined();
    },
  );
});
