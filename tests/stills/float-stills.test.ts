import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { decode } from 'tiff';
import { describe, expect, it } from 'vitest';
import type { InputError } from '../../src/errors/input-error.js';
import { seededRandom } from '../../src/maths/random.js';
import type { Picture } from '../../src/picture/picture.js';
import { decodeStill } from '../../src/stills/read-still.js';
import { encodeFloatsTo } from '../../src/stills/write-still.js';

import { temporaryFolder } from '../cli/gatelight.js';
import { floatTiffFile, someProfile } from './fixtures.js';

const folder = temporaryFolder();

/** The page's decoder. By its path: it is compiled for a browser, with the browser's types. */
const pageDecoder = resolve(import.meta.dirname, '../../src/page/worker/decode-still.ts');
const { decodeStill: decodeInPage } = (await import(pageDecoder)) as {
  decodeStill: (bytes: Uint8Array, file: string) => Promise<Picture>;
};
const random = seededRandom(32);
const width = 5;
const valuesFor = (samples: number) =>
  Array.from({ length: 3 * width * samples }, () => Math.fround(1.5 * random() - 0.25));

describe.each([1, 3, 4] as const)('%i channels in floating point', (channels) => {
  it.each([false, true])('are read as they are, and as codes (big-endian: %s)', async (bigEndian) => {
    const values = valuesFor(channels);
    const file = floatTiffFile(width, channels, values, { bigEndian });
    const { picture, floats, notes } = await decodeStill(file, 'a.tif');
    expect(await decodeInPage(file, 'a.tif')).toEqual(picture);
    expect([...floats!.data]).toEqual(values);
    expect([floats!.width, floats!.height, floats!.channels]).toEqual([width, 3, channels]);
    expect(picture).toMatchObject({ width, height: 3, channels, bits: 16 });
    expect([...picture.data]).toEqual(
      values.map((value) => Math.round(65535 * Math.min(1, Math.max(0, value)))),
    );
    const outside = values.filter((value) => value < 0 || value > 1).length;
    expect(notes).toEqual([
      `${outside} of its ${values.length} values lie outside 0 to 1, the codes from first to last`,
    ]);
  });

  it('are written as they are, with what is carried', async () => {
    const values = valuesFor(channels);
    const file = join(folder, `${channels}.tif`);
    const profile = new Uint8Array(await someProfile());
    const picture = { width, height: 3, channels, data: Float32Array.from(values) };
    await encodeFloatsTo(file, picture, { density: 2400, ...(channels > 1 && { profile }) });
    // An independent reader.
    const [page] = decode(readFileSync(file));
    expect([page.width, page.height, page.components, page.bitsPerSample]).toEqual([width, 3, channels, 32]);
    expect([...page.data]).toEqual(values);
    const back = await decodeStill(readFileSync(file), file);
    expect(back.floats).toEqual(picture);
    expect(back.density).toBe(2400);
    expect(back.profile).toEqual(channels > 1 ? profile : undefined);
  });
});

it('turns floating point upright as codes are', async () => {
  const file = floatTiffFile(2, 1, [0, 0.25, 0.5, 0.75, 1, 0.125], { more: [[274, 3, [6]]] });
  const { picture, floats } = await decodeStill(file, 'a.tif');
  expect([floats!.width, floats!.height]).toEqual([3, 2]);
  expect([...floats!.data]).toEqual([1, 0.5, 0, 0.125, 0.75, 0.25]);
  expect([...picture.data]).toEqual([...floats!.data].map((value) => Math.round(65535 * value)));
});

describe('refuses', () => {
  const whatOf = (file: Buffer) =>
    decodeStill(file, 'a.tif').then(
      () => 'nothing',
      (error: InputError) => error.problems[0].what,
    );
  it('what is no number, and says how many', async () => {
    const file = floatTiffFile(3, 1, [0, NaN, Infinity, 1, -Infinity, 0.5]);
    expect(await whatOf(file)).toBe('holds 3 values that are infinite or no numbers, of 6');
    await expect(decodeInPage(file, 'a.tif')).rejects.toThrow(
      'holds 3 values that are infinite or no numbers',
    );
  });

  it('colours multiplied by alpha, negatives, and grey with alpha', async () => {
    const premultiplied = floatTiffFile(1, 4, [0, 0, 0, 1]);
    // Its tag of extra samples, from straight to multiplied (TIFF 6.0, section 18).
    const at = premultiplied.indexOf(Buffer.from([338 & 255, 338 >> 8, 3, 0, 1, 0, 0, 0]));
    premultiplied[at + 8] = 1;
    expect(await whatOf(premultiplied)).toBe('holds floating point numbers multiplied by alpha');
    const negative = floatTiffFile(1, 1, [0.5]);
    negative[negative.indexOf(Buffer.from([262 & 255, 262 >> 8, 3, 0, 1, 0, 0, 0])) + 8] = 0;
    expect(await whatOf(negative)).toBe('holds floating point numbers in the negative');
    expect(await whatOf(floatTiffFile(1, 2, [0.5, 1]))).toBe('holds grey with alpha in floating point');
  });
});
