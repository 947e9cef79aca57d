import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { barColours, bars } from '../../clips/bars.js';
import { packagedTools } from '../../clips/tools.js';
import { isRefusal, openWorkbench } from './workbench.js';

const { at, gatelight, ffmpeg } = openWorkbench();

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

  it('that is damaged is told', () => {
    // RFC 9043, 4.9: slices of version 3 carry a checksum.
    ffmpeg('-i', at('reel.mkv'), '-c:v', 'ffv1', '-level', '3', '-slicecrc', '1', at('torn.mkv'));
    const entries = ['-v', 'error', '-show_entries', 'packet=pos,size', '-of', 'csv=p=0', at('torn.mkv')];
    const packets = execFileSync(packagedTools.ffprobe, entries, { encoding: 'utf8' }).trim().split('\n');
    const [a, b] = packets[12].split(',').map(Number);
    // The greater is the place: versions differ in the order of the two.
    const [place, size] = [Math.max(a, b), Math.min(a, b)];
    const bytes = readFileSync(at('torn.mkv'));
    bytes.fill(0x55, place + Math.floor(size / 2), place + Math.floor(size / 2) + 40);
    writeFileSync(at('torn.mkv'), bytes);
    const told = (frame: number) =>
      gatelight(['preview', 'warm.cube', `torn.mkv@f${frame}`, '-o', `torn-${frame}.png`]).stderr;
    expect(told(12)).toMatch(/damaged at frame 12 or shortly before \(.*\): look at it/);
    expect(told(3)).not.toContain('damaged');
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
