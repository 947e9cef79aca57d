import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.js';
import { makePicture, type Picture } from '../../src/picture/picture.js';
import { encodeStill, encodeStillTo } from '../../src/stills/write-still.js';
import { writingError } from '../../src/stills/writing-error.js';
import { temporaryFolder } from '../cli/gatelight.js';
import { someProfile } from './fixtures.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);

function noise(width: number, height: number, bits: Picture['bits']): Picture {
  const random = seededRandom(width);
  const picture = makePicture(width, height, { channels: 3, bits });
  for (let i = 0; i < picture.data.length; i++) picture.data[i] = Math.floor(random() * 2 ** bits);
  return picture;
}

const carried = {
  nothing: {},
  density: { density: 2400 },
  much: { density: 300, xmp: Buffer.from('<x/>'), profile: new Uint8Array(await someProfile()) },
};
const cases = ['a.png', 'a.tif', 'a.jpg'].flatMap((name) =>
  (Object.keys(carried) as (keyof typeof carried)[]).map((what) => ({ name, what })),
);

describe.each(cases)('$name with $what', ({ name, what }) => {
  it.each([8, 16] as const)('is the same written into a file as in memory (%i bits)', async (bits) => {
    const picture = noise(40, 30, bits);
    const { bytes, notes } = await encodeStill(name, picture, carried[what]);
    const file = at('one.part');
    writeFileSync(file, 'what stood there before and is longer than nothing');
    expect(await encodeStillTo(file, name, picture, carried[what])).toEqual(notes);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });
});

it('is the same where what it carries moves more of the file than is moved at once', async () => {
  const picture = noise(1000, 800, 8);
  const { bytes } = await encodeStill('a.png', picture, carried.much);
  expect(bytes.length).toBeGreaterThan(2 << 20);
  await encodeStillTo(at('large.part'), 'a.png', picture, carried.much);
  expect(readFileSync(at('large.part')).equals(bytes)).toBe(true);
});

it('takes brackets in a folder’s name for part of the name', async () => {
  const odd = join(folder, 'reel [1], x=2');
  mkdirSync(odd);
  await encodeStillTo(join(odd, 'f.part'), 'a.tif', noise(4, 3, 8));
  expect(existsSync(join(odd, 'f.part'))).toBe(true);
});

describe('a file that cannot be written', () => {
  it('is told by the system’s code', async () => {
    const work = encodeStillTo(at('missing/one.part'), 'a.png', noise(4, 3, 8));
    await expect(work).rejects.toMatchObject({ code: 'ENOENT' });
  });

  it.each([
    ['No space left on device', 'ENOSPC'],
    ['Disk quota exceeded', 'EDQUOT'],
    ['Read-only file system', 'EROFS'],
    ['words that no system says', 'EIO'],
  ])('%s: %s', (words, code) => {
    const complaint = `/x/y.tif: write error\nsystem error: ${words}\nwbuffer_write: write failed\nsystem error: Unknown error -1`;
    expect(writingError(new Error(complaint))).toMatchObject({ code, message: complaint });
  });
});
