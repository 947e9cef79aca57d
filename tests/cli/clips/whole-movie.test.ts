import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFrames } from '../../../src/clips/read-frames.js';
import { sampleLut } from '../../../src/lut/interpolate.js';
import { readCube } from '../../../src/lut/formats/cube/read.js';
import { barColours, bars, tagsOf } from '../../clips/bars.js';
import { numberedFrames } from '../../clips/numbered.js';
import { encodeClip, packagedTools } from '../../clips/tools.js';
import { count, expectNumbers, openWorkbench } from './workbench.js';

const { at, gatelight, ffmpeg, facts, reel, numbersIn, leftovers } = openWorkbench();

describe('a whole movie through a look', () => {
  it('as many frames out as in, each the right one', async () => {
    const ended = gatelight(['apply', 'same.cube', 'reel.mkv', '-o', 'same.mkv']);
    expect(ended, ended.stderr).toMatchObject({ status: 0, stdout: 'same.mkv: 30 frames, same.cube.\n' });
    expectNumbers(await numbersIn(at('same.mkv')), count(30));
    expect(leftovers()).toEqual([]);
  });

  it('keeps sound, rate, time code and aspect; tags say what the look delivers', async () => {
    const sound = ['-f', 'lavfi', '-i', 'sine=440:duration=1.2', '-c:a', 'pcm_s16le'];
    const tags = tagsOf({ range: 'legal', matrix: 'bt709' });
    const said = ['-timecode', '10:00:00:00', '-aspect', '4:3', '-r', '24000/1001', ...tags];
    ffmpeg('-r', '24000/1001', '-i', reel, ...sound, ...said, '-c:v', 'ffv1', at('sound.mkv'));
    for (const output of ['kept.mkv', 'kept.mov']) {
      const options = output.endsWith('mov') ? ['--encoder', 'mpeg4', '--encoder-options', '-q:v 2'] : [];
      const ended = gatelight(['apply', 'warm.cube', 'sound.mkv', '-o', output, ...options]);
      expect(ended.status, ended.stderr).toBe(0);
      const [before, after] = [await facts(at('sound.mkv')), await facts(at(output))];
      expect(after.frameRate[0] / after.frameRate[1]).toBeCloseTo(24000 / 1001, 3);
      expect(after).toMatchObject({
        soundStreams: 1,
        timeCode: '10:00:00:00',
        sampleAspect: before.sampleAspect,
      });
      // In this container, versions before 4.3 know no number for sRGB.
      expect(output.endsWith('mov') ? [undefined, 'iec61966-2-1'] : ['iec61966-2-1']).toContain(
        after.colour.transfer,
      );
      expect(after.colour).toMatchObject({ primaries: 'bt709', matrix: 'bt709', range: 'legal' });
      const hash = (path: string) => ffmpeg('-i', path, '-map', '0:a', '-f', 'md5', '-').toString();
      expect(hash(at(output))).toBe(hash(at('sound.mkv')));
    }
  });

  it('colours are those of the table, at every bar', async () => {
    expect(gatelight(['apply', 'warm.cube', 'bars.mkv', '-o', 'warm.mkv']).status).toBe(0);
    const expected = Float64Array.from(bars.flat());
    sampleLut(readCube(readFileSync(at('warm.cube')), 'warm.cube').lut)(expected, bars.length);
    for await (const { picture } of readFrames(await facts(at('warm.mkv'))))
      barColours(picture).forEach((colour, bar) =>
        colour.forEach((value, c) => expect(Math.abs(value - expected[3 * bar + c])).toBeLessThan(2 / 255)),
      );
  });

  it('--flip h mirrors, and odd sizes in 4:2:0 pass', async () => {
    expect(gatelight(['apply', 'same.cube', 'bars.mkv', '-o', 'flipped.mkv', '--flip', 'h']).status).toBe(0);
    for await (const { picture } of readFrames(await facts(at('flipped.mkv'))))
      barColours(picture).forEach((colour, bar) =>
        colour.forEach((value, c) =>
          expect(Math.abs(value - bars[bars.length - 1 - bar][c])).toBeLessThan(2 / 255),
        ),
      );
    encodeClip(packagedTools, at('odd.mkv'), numberedFrames(5, { width: 47, height: 31 }));
    const ended = gatelight(['apply', 'same.cube', 'odd.mkv', '-o', 'odd-out.mkv']);
    expect(ended.status, ended.stderr).toBe(0);
    expect(await facts(at('odd-out.mkv'))).toMatchObject({ width: 47, height: 31 });
    expectNumbers(await numbersIn(at('odd-out.mkv')), count(5));
  });

  it('fields stay fields, and which comes first is kept', async () => {
    for (const first of ['tff', 'bff']) {
      const fields = ['-vf', `setfield=${first}`, '-flags', '+ildct', '-c:v', 'mpeg2video', '-q:v', '2'];
      ffmpeg('-i', reel, ...fields, at(`${first}.mkv`));
      const ended = gatelight(['apply', 'same.cube', `${first}.mkv`, '-o', `${first}-out.mkv`]);
      expect(ended.stderr).toMatch(/is interlaced/);
      const { firstField } = await facts(at(`${first}-out.mkv`));
      expect(firstField).toBe(first === 'tff' ? 'top' : 'bottom');
      // Upside down, the lines of a frame of even height change fields.
      gatelight(['apply', 'same.cube', `${first}.mkv`, '-o', `${first}-turned.mkv`, '--flip', 'v']);
      expect((await facts(at(`${first}-turned.mkv`))).firstField).toBe(first === 'tff' ? 'bottom' : 'top');
    }
  });

  it('names with blanks, line breaks, @ and a leading dash', async () => {
    for (const name of ['two words.mkv', '-y.mkv', 'line\nbreak.mkv', 'at@f1.mkv']) {
      writeFileSync(at(name), readFileSync(reel));
      const ended = gatelight(['apply', '-o', `out ${name}`, '--', 'same.cube', name]);
      expect(ended.status, ended.stderr).toBe(0);
      expectNumbers(await numbersIn(at(`out ${name}`)), count(30));
    }
  });
});
