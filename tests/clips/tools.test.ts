import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findTools } from '../../src/clips/tools.js';
import { sentences } from '../../src/errors/sentence.js';
import type { InputError } from '../../src/errors/input-error.js';
import { temporaryFolder } from './tools.js';

const folder = temporaryFolder();

function program(...path: string[]): string {
  const file = join(folder, ...path);
  mkdirSync(join(file, '..'), { recursive: true });
  writeFileSync(file, '');
  chmodSync(file, 0o755);
  return file;
}

const both = { ffmpeg: program('both', 'ffmpeg'), ffprobe: program('both', 'ffprobe') };
const alone = program('alone', 'ffmpeg');
const elsewhere = program('elsewhere', 'ffprobe');

const refusal = (environment: Record<string, string>) =>
  findTools(environment).then(
    () => 'found',
    (error: InputError) => sentences(error),
  );

// A program needs an ending there, and no permission.
describe.skipIf(process.platform === 'win32')('where ffmpeg and ffprobe are looked for', () => {
  it('on PATH, ffprobe beside ffmpeg first', async () => {
    expect(await findTools({ PATH: join(folder, 'both') })).toEqual(both);
    expect(
      await findTools({ PATH: `/nowhere:${join(folder, 'alone')}:${join(folder, 'elsewhere')}` }),
    ).toEqual({
      ffmpeg: alone,
      ffprobe: elsewhere,
    });
    expect(await findTools({ PATH: join(folder, 'elsewhere'), GATELIGHT_FFMPEG: both.ffmpeg })).toEqual(both);
  });

  it('where the variables say', async () => {
    expect(await findTools({ GATELIGHT_FFMPEG: alone, GATELIGHT_FFPROBE: elsewhere })).toEqual({
      ffmpeg: alone,
      ffprobe: elsewhere,
    });
  });

  it('else one line says what is missing and how to install it', async () => {
    const none = await refusal({ PATH: '/nowhere' });
    expect(none).toMatch(/clips need ffmpeg, and it was not found\. Install/);
    expect(none).toContain('GATELIGHT_FFMPEG');
    expect(none.split('\n')).toHaveLength(1);
    expect(await refusal({ PATH: join(folder, 'alone') })).toMatch(/need ffprobe/);
    expect(await refusal({ GATELIGHT_FFMPEG: folder })).toMatch(/GATELIGHT_FFMPEG: .* is not a program/);
  });
});
