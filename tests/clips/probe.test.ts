import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { probeClip } from '../../src/clips/probe.js';
import { readClipStill } from '../../src/clips/read-clip-still.js';
import { type InputError } from '../../src/errors/input-error.js';
import { sentences } from '../../src/errors/sentence.js';
import { barColours, bars, drawBars } from './bars.js';
import { numberedFrames, numberIn } from './numbered.js';
import { encodeClip, packagedTools, temporaryFolder } from './tools.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
const probe = (path: string, choice = {}) => probeClip(path, choice, packagedTools);
const refusal = (path: string) =>
  probe(path).then(
    () => 'read',
    (error: InputError) => sentences(error),
  );
const ffmpeg = (...args: string[]) => execFileSync(packagedTools.ffmpeg, ['-v', 'error', '-y', ...args]);

const ten = encodeClip(packagedTools, at('ten.mkv'), numberedFrames(10));

describe('what is said of a clip', () => {
  it('rate, size, aspect, time code, sound', async () => {
    const sound = ['-f', 'lavfi', '-i', 'anullsrc=r=48000:cl=mono', '-shortest'];
    const said = ['-timecode', '01:02:03:04', '-aspect', '2:1', '-c:v', 'mpeg4', '-c:a', 'pcm_s16le'];
    ffmpeg('-i', ten, ...sound, ...said, at('said.mov'));
    const clip = await probe(at('said.mov'));
    expect(clip).toMatchObject({
      width: 48,
      height: 32,
      codec: 'mpeg4',
      frameRate: [25, 1],
      soundStreams: 1,
    });
    expect(clip).toMatchObject({ timeCode: '01:02:03:04', sampleAspect: [4, 3], statedFrames: 10 });
  });

  it('missing tags: what is assumed is said in one line, and a choice overrules it', async () => {
    const small = await probe(ten);
    expect(small.colour).toMatchObject({ matrix: 'bt601', range: 'legal' });
    // Newer versions tag the range unasked.
    expect([
      'its tags do not say matrix and range: taken as BT.601 and legal; --matrix and --range say otherwise',
      'its tags do not say matrix: taken as BT.601; --matrix says otherwise',
    ]).toContain(small.notes.join());
    const large = numberedFrames(1, { width: 1280, height: 720 });
    encodeClip(packagedTools, at('large.mkv'), large, ['-color_range', 'pc']);
    const { colour } = await probe(at('large.mkv'));
    expect(colour).toMatchObject({ matrix: 'bt709', range: 'full' });
    expect(colour.assumed).toBe('its tags do not say matrix: taken as BT.709; --matrix says otherwise');
    const chosen = await probe(ten, { matrix: 'bt2020', range: 'full' });
    expect(chosen.colour).toMatchObject({ matrix: 'bt2020', range: 'full', assumed: undefined });
    expect(chosen.notes).toEqual([]);
  });

  it('a choice overrules tags that are wrong', async () => {
    const kind = { pattern: '444', bits: 10, range: 'full', matrix: 'bt2020' } as const;
    const wrong = ['-colorspace', 'smpte170m', '-color_range', 'tv'];
    const path = encodeClip(packagedTools, at('wrong.mkv'), drawBars(kind), wrong);
    const { picture } = await readClipStill(await probe(path, { matrix: 'bt2020', range: 'full' }), {
      frame: 0,
    });
    barColours(picture).forEach((colour, bar) =>
      colour.forEach((value, c) => expect(Math.abs(value - bars[bar][c])).toBeLessThan(2 / 255)),
    );
  });

  it('several video streams: the first, said so', async () => {
    ffmpeg(
      '-i',
      ten,
      '-f',
      'lavfi',
      '-i',
      'color=red:s=64x64:d=1',
      '-map',
      '0',
      '-map',
      '1',
      '-c:v',
      'ffv1',
      at('two.mkv'),
    );
    const clip = await probe(at('two.mkv'));
    expect(clip.width).toBe(48);
    expect(clip.notes[0]).toBe('has 2 video streams: the first is read');
  });

  it('alpha is left out, said so', async () => {
    ffmpeg(
      '-f',
      'lavfi',
      '-i',
      'color=red@0.5:s=32x32:d=0.1,format=yuva444p',
      '-c:v',
      'ffv1',
      at('alpha.mkv'),
    );
    const clip = await probe(at('alpha.mkv'));
    expect(clip.notes).toContain('its alpha channel is left out');
    const { picture } = await readClipStill(clip, { frame: 0 });
    const [r, g, b] = [...picture.data.subarray(0, 3)].map((code) => code / 257);
    expect(Math.abs(r - 255) + g + b).toBeLessThan(6);
  });

  it('odd sizes in 4:2:0', async () => {
    const odd = numberedFrames(3, { width: 47, height: 31 });
    const clip = await probe(encodeClip(packagedTools, at('odd.mkv'), odd));
    const { picture } = await readClipStill(clip, { frame: 2 });
    expect(picture).toMatchObject({ width: 47, height: 31 });
    expect(numberIn(picture.data)).toBeCloseTo(2, 2);
    expect(picture.data[picture.data.length - 1]).toBe(picture.data[0]);
  });

  it('a recording that lay on its side is read upright', async () => {
    ffmpeg('-i', ten, '-c:v', 'mpeg4', at('lying.mp4'));
    // Older versions take it as a tag, newer ones as what the input is.
    const turns = [
      ['-i', at('lying.mp4'), '-metadata:s:v', 'rotate=90'],
      ['-display_rotation', '90', '-i', at('lying.mp4')],
    ];
    for (const words of turns)
      try {
        ffmpeg(...words, '-c', 'copy', at('turned.mp4'));
      } catch {
        // Not in this version.
      }
    const clip = await probe(at('turned.mp4'));
    expect([clip.width, clip.height]).toEqual([32, 48]);
    const { picture } = await readClipStill(clip, { frame: 1 });
    expect([picture.width, picture.height]).toEqual([32, 48]);
  });
});

describe('what is no clip', () => {
  it.each([
    ['missing.mkv', /missing\.mkv: no such file/],
    ['folder.mkv', /is a folder/],
    ['empty.mkv', /is empty/],
    ['text.mkv', /is not a movie that can be read/],
    ['text.txt', /is not a movie that can be read/],
    ['noise.mp4', /is not a movie that can be read/],
    ['half.mp4', /is not a movie that can be read/],
    ['sound.mkv', /has no video stream, only sound/],
    ['playlist.m3u8', /is not a movie that can be read/],
  ])('%s', async (name, words) => {
    mkdirSync(at('folder.mkv'), { recursive: true });
    writeFileSync(at('empty.mkv'), '');
    for (const text of ['text.mkv', 'text.txt']) writeFileSync(at(text), 'Reels of the harbour club, 1961\n');
    writeFileSync(
      at('noise.mp4'),
      Uint8Array.from({ length: 5000 }, (_, i) => (i * 7919) >> 3),
    );
    ffmpeg('-i', ten, '-c:v', 'mpeg4', at('whole.mp4'));
    writeFileSync(at('half.mp4'), readFileSync(at('whole.mp4')).subarray(0, 900));
    ffmpeg('-f', 'lavfi', '-i', 'anullsrc', '-t', '0.1', at('sound.mkv'));
    writeFileSync(at('playlist.m3u8'), '#EXTM3U\n#EXTINF:10,\nhttp://127.0.0.1:9/reel.ts\n');
    const said = await refusal(at(name));
    expect(said).toMatch(words);
    expect(said.split('\n')).toHaveLength(1);
  });

  it('a header with no frames behind it', async () => {
    ffmpeg('-i', ten, '-frames:v', '0', '-c:v', 'ffv1', at('none.mkv'));
    const failure = await probe(at('none.mkv'))
      .then((clip) => readClipStill(clip, { frame: 0 }))
      .catch((error: InputError) => sentences(error));
    expect(failure).toMatch(/holds no frames|is not a movie|cannot be decoded|have no size/);
  });

  it.each([{ frame: 10 }, { seconds: 0.41 }, { seconds: 3600 }])(
    'a place past the end: %o',
    async (place) => {
      const failure = await readClipStill(await probe(ten), place).catch((error: InputError) =>
        sentences(error),
      );
      expect(failure).toMatch(/is past its end\. Allowed: frames 0 to 9, times up to 0:00\.36/);
    },
  );

  it('matrices that are not read here, unless --matrix says otherwise', async () => {
    const path = encodeClip(packagedTools, at('ycgco.mkv'), numberedFrames(1), ['-colorspace', 'ycgco']);
    expect(await refusal(path)).toMatch(/name the matrix "ycgco".*--matrix/);
    expect((await probe(path, { matrix: 'bt709' })).colour.matrix).toBe('bt709');
  });
});
