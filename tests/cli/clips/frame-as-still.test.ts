import { readdirSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { barColours, bars } from '../../clips/bars.js';
import { isRefusal, openWorkbench } from './workbench.js';

const { at, gatelight } = openWorkbench();

describe('a frame of a movie as a still', () => {
  it('apply writes it, colours as drawn', async () => {
    expect(gatelight(['apply', 'same.cube', 'bars.mkv@0:00', '-o', 'bars.png']).status).toBe(0);
    const image = sharp(at('bars.png')).toColourspace('rgb16').raw({ depth: 'ushort' });
    const { data, info } = await image.toBuffer({ resolveWithObject: true });
    const codes = new Uint16Array(data.buffer, data.byteOffset, data.length / 2);
    barColours({ ...info, data: codes }).forEach((colour, bar) =>
      colour.forEach((value, c) => expect(Math.abs(value - bars[bar][c])).toBeLessThan(2 / 255)),
    );
  });

  it('apply writes several into a folder, named in the order of the reel', () => {
    const names = ['reel.mkv@f3', 'reel.mkv@f12', 'reel.mkv@0:00.5'];
    const ended = gatelight(['apply', 'same.cube', ...names, '-o', 'frames']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(readdirSync(at('frames')).sort()).toEqual([
      'reel-0-00.5.png',
      'reel-f000003.png',
      'reel-f000012.png',
    ]);
    const again = gatelight(['apply', 'same.cube', 'reel.mkv@f3', 'reel.mkv@f03', '-o', 'never']);
    expect(isRefusal(again), again.stderr).toBe(true);
    expect(again.stderr).toContain('would be written as reel-f000003.png');
  });

  it('preview, capture exposure and measure take it', () => {
    const preview = gatelight(['preview', 'warm.cube', 'bars.mkv@f0', '-o', 'seen.png']);
    expect(preview.status, preview.stderr).toBe(0);
    const exposure = gatelight(['capture', 'exposure', 'reel.mkv@f3', 'reel.mkv@f25', '--json']);
    expect([0, 1]).toContain(exposure.status);
    const measured = gatelight(['measure', 'bars.mkv@f0', '--json']);
    expect((JSON.parse(measured.stdout) as { stills: string[] }).stills).toEqual(['bars.mkv@f0']);
  });

  it('refuses what is past the end, and a movie where a frame is wanted', () => {
    for (const name of ['reel.mkv@f30', 'reel.mkv@2:00', 'reel.mkv', 'gone.mkv@f1']) {
      const ended = gatelight(['preview', 'warm.cube', name, '-o', 'never.png']);
      expect(isRefusal(ended), ended.stderr).toBe(true);
    }
  });

  it('without ffmpeg one line says so, and stills are read as before', () => {
    const nowhere = { GATELIGHT_FFMPEG: '', GATELIGHT_FFPROBE: '', PATH: '/nowhere' };
    const clip = gatelight(['preview', 'warm.cube', 'bars.mkv@f0', '-o', 'never.png'], nowhere);
    expect(isRefusal(clip), clip.stderr).toBe(true);
    expect(clip.stderr).toMatch(/^gatelight: clips need ffmpeg.*Install it/);
    const still = gatelight(['preview', 'warm.cube', 'bars.png', '-o', 'still.png'], nowhere);
    expect(still.status, still.stderr).toBe(0);
  });
});
