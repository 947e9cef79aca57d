import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sentences } from '../../src/errors/sentence.js';
import { seededRandom } from '../../src/maths/random.js';
import { decodeStill, readStill } from '../../src/stills/read-still.js';
import { maxStillBytes } from '../../src/stills/limits.js';
import { jpeg, png, shorts, tiff } from '../stills/fixtures.js';

let folder = '';
beforeAll(() => (folder = mkdtempSync(join(tmpdir(), 'gatelight-test-'))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What the user is told. */
async function toldOf(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(error instanceof InputError)) throw new Error(`no InputError, but ${String(error)}`);
  return sentences(error);
}
const told = (bytes: Uint8Array, file = 'still') => toldOf(decodeStill(bytes, file));

const grey = { width: 1, height: 1, samples: 1, bits: 8, photometric: 1, data: Uint8Array.from([1]) };
const rgb = { ...grey, samples: 3, photometric: 2 };
const small = png({ width: 2, height: 2, bits: 8, colourType: 0, rows: [0, 1, 2, 0, 3, 4] });
const photo = async (): Promise<Buffer> => {
  const random = seededRandom(3);
  const data = Uint8Array.from({ length: 64 * 48 * 3 }, () => Math.floor(256 * random()));
  return sharp(data, { raw: { width: 64, height: 48, channels: 3 } })
    .jpeg()
    .toBuffer();
};

describe('kinds of picture that are refused', () => {
  it('nothing at all, and what is no picture', async () => {
    expect(await told(new Uint8Array(0))).toBe('still: is empty. Was it copied to the end?');
    const none = 'still: is not a picture that can be read. Allowed: PNG, JPEG and TIFF.';
    for (const text of [
      'LUT_3D_SIZE 33',
      'GIF89a',
      'RIFF....WEBP',
      '%PDF-1.7',
      '<svg xmlns="http://www.w3.org/2000/svg"/>',
    ])
      expect(await told(Buffer.from(text))).toBe(none);
    expect(await told(Uint8Array.from([0x89]))).toBe(none);
  });

  it('goes by what a file holds, not by its name', async () => {
    expect((await decodeStill(small, 'wrong.jpg')).picture.width).toBe(2);
  });

  it('CMYK, with what to do', async () => {
    const words = /holds CMYK.*Use the file from before it was prepared for print, or convert it to RGB/;
    expect(
      await told(tiff({ ...grey, samples: 4, photometric: 5, data: Uint8Array.from([1, 2, 3, 4]) })),
    ).toMatch(words);
    const data = Uint8Array.from([10, 20, 30, 40]);
    const still = sharp(tiff({ ...grey, samples: 4, photometric: 5, data }));
    expect(await told(await still.toColourspace('cmyk').jpeg().toBuffer())).toMatch(words);
  });

  it('CIELAB, at 8 and 16 bits', async () => {
    const data = Uint8Array.from([1, 2, 3, 4, 5, 6]);
    for (const bits of [8, 16])
      expect(
        await told(tiff({ ...rgb, bits, photometric: 8, data: data.subarray(0, (3 * bits) / 8) })),
      ).toMatch(/holds CIELAB/);
  });

  it('floating point, signed and odd depths', async () => {
    const of = (bits: number, format: number) =>
      told(tiff({ ...grey, bits, data: new Uint8Array(16), more: [[339, 3, [format]]] }));
    for (const bits of [16, 64])
      expect(await of(bits, 3)).toMatch(
        `holds floating point numbers of ${bits} bits. Allowed: 32 bits. Save it as PNG or TIFF`,
      );
    for (const bits of [8, 16, 32]) expect(await of(bits, 2)).toMatch(/numbers with a sign/);
    for (const bits of [10, 12, 14, 32]) expect(await of(bits, 1)).toMatch(`holds ${bits} bits per sample`);
  });

  it('camera raw files, by any of their signs', async () => {
    const words = /is a camera raw file, not a finished picture.*Develop it/;
    expect(await told(tiff({ ...grey, more: [[50706, 1, [1, 4, 0, 0]]] }))).toMatch(words);
    expect(await told(tiff({ ...grey, bits: 16, photometric: 32803, data: shorts([9]) }))).toMatch(words);
    expect(
      await told(
        tiff({
          ...grey,
          more: [
            [254, 4, [1]],
            [330, 4, [8]],
          ],
        }),
      ),
    ).toMatch(words);
  });

  it('more channels than colour and alpha', async () => {
    const data = Uint8Array.from([1, 2, 3, 4, 5]);
    expect(await told(tiff({ ...rgb, samples: 5, data, more: [[338, 3, [0, 0]]] }))).toMatch(
      /is neither grey nor RGB/,
    );
  });

  it('no pixels', async () => {
    expect(await told(png({ width: 0, height: 1, bits: 8, colourType: 0, rows: [0] }))).toMatch(/is damaged/);
    expect(await told(tiff({ ...grey, width: 0 }))).toMatch(/is damaged/);
  });

  it('more than 120 megapixels, from the header: there is no data behind it', async () => {
    const huge = png({ width: 20_000, height: 6_001, bits: 8, colourType: 0, rows: [0] });
    expect(await told(huge)).toBe(
      'still: has 20000 x 6001 pixels. Allowed: 120 megapixels at most. Make it smaller first.',
    );
    const bomb = png({ width: 2_000_000_000, height: 2_000_000_000, bits: 16, colourType: 6, rows: [0] });
    expect(await told(bomb)).toMatch(/pixels|damaged/);
  });
});

describe('broken files', () => {
  it('every PNG that is cut short', async () => {
    const file = png({
      width: 40,
      height: 30,
      bits: 16,
      colourType: 2,
      rows: Array.from({ length: 30 * 241 }, (_, i) => (i % 241 === 0 ? 0 : (i * 37) % 256)),
    });
    // The last 12 bytes only say that the file ends.
    for (let length = 1; length < file.length - 12; length += 1 + Math.floor(file.length / 60))
      expect(await told(file.subarray(0, length))).toMatch(
        /is damaged, cut short or of an unusual kind|is not a picture/,
      );
  });

  it('every TIFF that is cut short', async () => {
    const file = tiff({ ...grey, width: 40, height: 30, data: new Uint8Array(1200).fill(9) });
    for (let length = 1; length < file.length; length += 97)
      expect(await told(file.subarray(0, length))).toMatch(
        /is damaged, cut short or of an unusual kind|is not a picture/,
      );
  });

  it('every JPEG that is cut short', async () => {
    const file = await photo();
    for (let length = 1; length < file.length - 100; length += 1 + Math.floor(file.length / 40))
      expect(await told(file.subarray(0, length))).toMatch(
        /is damaged, cut short or of an unusual kind|is not a picture/,
      );
  });

  it('a JPEG that is broken inside but goes on to its end is read, with a note', async () => {
    const file = await photo();
    const middle = Math.floor(file.length / 2);
    const hole = Buffer.concat([file.subarray(0, middle), file.subarray(middle + 200)]);
    const { picture, notes } = await decodeStill(hole, 'a.jpg');
    expect(picture).toMatchObject({ width: 64, height: 48, channels: 3 });
    expect(notes).toEqual(['the file is unusual or slightly damaged: look at the picture closely']);
  });

  it('bytes flipped at random (seed 11): a picture of that size, or words for the user', async () => {
    const random = seededRandom(11);
    const files = [
      small,
      await jpeg(8, 8, [90, 40, 20]),
      tiff(rgb),
      tiff({ ...grey, bits: 16, data: shorts([77]), bigEndian: true }),
    ];
    let read = 0;
    for (let n = 0; n < 240; n++) {
      const file = Buffer.from(files[n % files.length]);
      const flips = 1 + Math.floor(4 * random());
      for (let k = 0; k < flips; k++)
        file[Math.floor(random() * Math.min(file.length, 600))] ^= 1 << Math.floor(8 * random());
      try {
        const { picture } = await decodeStill(file, 'a');
        expect(picture.data).toHaveLength(picture.width * picture.height * picture.channels);
        read++;
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        expect(sentences(error as InputError)).not.toMatch(/\n|undefined|\bat \/|[Vv]ips/);
      }
    }
    expect(read).toBeGreaterThan(10); // some flips do no harm: else nothing was tried
  });

  it('random bytes behind each beginning (seed 12) are refused', async () => {
    const random = seededRandom(12);
    for (const start of [
      small.subarray(0, 8),
      Buffer.from([255, 216, 255]),
      Buffer.from('II*\0'),
      Buffer.from('MM\0*'),
    ])
      for (let n = 0; n < 25; n++) {
        const noise = Buffer.from(
          Array.from({ length: Math.floor(300 * random()) }, () => Math.floor(256 * random())),
        );
        expect(await told(Buffer.concat([start, noise]))).toMatch(/^still: /);
      }
  });
});

describe('files that cannot be opened', () => {
  it('missing, a folder, a file as a folder, a pipe, a device, a name no file can have', async () => {
    writeFileSync(join(folder, 'file'), small);
    mkdirSync(join(folder, 'reel'));
    execFileSync('mkfifo', [join(folder, 'pipe')]);
    const toldOfFile = (name: string) => toldOf(readStill(join(folder, name)));
    expect(await toldOfFile('missing.png')).toBe(
      `${join(folder, 'missing.png')}: no such file. Check the name and the folder it is in.`,
    );
    expect(await toldOfFile('reel')).toMatch(
      /is a folder, not a still\. Name a PNG, JPEG or TIFF file in it\.$/,
    );
    expect(await toldOfFile('file/a.png')).toMatch(/a part of the path is a file/);
    expect(await toldOfFile('pipe')).toMatch(/is a device or a pipe/);
    expect(await toldOf(readStill('/dev/zero'))).toMatch(/is a device or a pipe/);
    expect(await toldOfFile('a\0b')).toMatch(/is not a name a file can have/);
  });

  it('larger than any still: not even read', async () => {
    const path = join(folder, 'large.tif');
    writeFileSync(path, 'II*\0');
    truncateSync(path, maxStillBytes + 1); // a hole: it takes no room on the disk
    expect(await toldOf(readStill(path))).toMatch(/is too large for a still. Allowed: 1024 MB at most/);
  });

  it('and one that can: by a name with brackets, letters of all kinds, or a dash', async () => {
    for (const name of ['[page=1]', 'still.png[page=3]', 'Größe Ж 漢.png', '-o', ' a b ']) {
      writeFileSync(join(folder, name), small);
      expect([...(await readStill(join(folder, name))).picture.data]).toEqual([1, 2, 3, 4]);
    }
  });
});
