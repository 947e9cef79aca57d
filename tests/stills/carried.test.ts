import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { sourceOfBytes } from '../../src/stills/byte-source.js';
import { tagsOfExif, tagsOfTiff } from '../../src/stills/carried/exif.js';
import { decodeStill } from '../../src/stills/read-still.js';
import { encodeStill } from '../../src/stills/write-still.js';
import { someProfile, tiff } from './fixtures.js';

const artist = 'Film club of the harbour town';
const taken = '1964:04:12 10:30:00';
const xmpOf = (orientation: number) =>
  `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">` +
  `<rdf:Description xmlns:tiff="http://ns.adobe.com/tiff/1.0/" tiff:Orientation="${orientation}"/>` +
  `</rdf:RDF></x:xmpmeta>`;
const profile = new Uint8Array(await someProfile());
const [width, height] = [31, 17];

/** A still with everything beside its picture, written by an encoder that is not ours. */
async function fullStill(format: 'png' | 'jpeg' | 'tiff', orientation = 1): Promise<Buffer> {
  const codes = Uint8Array.from({ length: 3 * width * height }, (_, i) => (i * 37) & 255);
  const picture = await sharp(codes, { raw: { width, height, channels: 3 } })
    .png()
    .toBuffer();
  return sharp(picture)
    .withIccProfile('p3', { attach: true })
    .withExif({
      IFD0: { Artist: artist },
      IFD2: { DateTimeOriginal: taken },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '54/1 30/1 0/1' },
    })
    .withXmp(xmpOf(orientation))
    .withMetadata({ orientation, density: 2400 })
    .toFormat(format)
    .toBuffer();
}

const text = (bytes: Uint8Array | undefined) => Buffer.from(bytes ?? []).toString('latin1');
const names = { png: 'a.png', jpeg: 'a.jpg', tiff: 'a.tif' } as const;
const formats = ['png', 'jpeg', 'tiff'] as const;
const ways = formats.flatMap((from) => formats.map((to) => ({ from, to })));

describe.each(ways)('from $from to $to', ({ from, to }) => {
  it('profile, XMP, density and EXIF go along', async () => {
    const still = await decodeStill(await fullStill(from), names[from]);
    const { bytes, notes } = await encodeStill(names[to], still.picture, still);
    const header = await sharp(bytes).metadata();
    expect(notes).toEqual([]);
    expect(header.icc?.length).toBeGreaterThan(128);
    expect(Uint8Array.from(header.icc ?? [])).toEqual(still.profile);
    expect(header.density).toBe(2400);
    expect(text(header.xmp)).toBe(xmpOf(1));
    // The foreign encoder writes no EXIF into TIFF files, so none can come out of one.
    if (from === 'tiff') return;
    const exif = to === 'tiff' ? tagsOfTiff(sourceOfBytes(bytes)) : undefined;
    if (exif === undefined) {
      for (const said of [artist, taken]) expect(text(header.exif)).toContain(said);
      return;
    }
    const found = (tag: number) =>
      text([...exif.picture, ...exif.exif].find((entry) => entry.tag === tag)?.bytes).replace(/\0+$/, '');
    expect(found(315)).toBe(artist);
    expect(found(36867)).toBe(taken);
    expect(exif.gps.map(({ tag }) => tag)).toContain(2);
  });
});

describe('orientation', () => {
  it.each(['png', 'jpeg'] as const)(
    '%s: the picture is turned, and nobody turns it again',
    async (format) => {
      const still = await decodeStill(await fullStill(format, 6), names[format]);
      expect([still.picture.width, still.picture.height]).toEqual([height, width]);
      for (const to of formats) {
        const { bytes } = await encodeStill(names[to], still.picture, still);
        const again = await sharp(bytes).metadata();
        expect(again.orientation ?? 1).toBe(1);
        expect(text(again.xmp)).toBe(xmpOf(1));
        expect([again.width, again.height]).toEqual([height, width]);
      }
    },
  );
});

describe('from a TIFF with tags of its own', () => {
  const codes = new Uint8Array(3 * width * height).map((_, i) => i & 255);
  const ascii = (words: string) => [...Buffer.from(`${words}\0`)];
  it.each([false, true])('camera and rights go along (big-endian: %s)', async (bigEndian) => {
    const file = tiff({
      width,
      height,
      samples: 3,
      bits: 8,
      photometric: 2,
      data: codes,
      bigEndian,
      more: [
        [271, 2, ascii('Gate camera')],
        [33432, 2, ascii(artist)],
      ],
    });
    const still = await decodeStill(file, 'a.tif');
    const again = await decodeStill((await encodeStill('b.tif', still.picture, still)).bytes, 'b.tif');
    expect(again).toEqual(still);
    const { bytes } = await encodeStill('b.png', still.picture, still);
    const exif = text((await sharp(bytes).metadata()).exif);
    expect(exif).toContain('Gate camera');
    expect(exif).toContain(artist);
  });
});

describe('what is carried', () => {
  it('keeps every code and loses nothing over ten generations', async () => {
    let still = await decodeStill(await fullStill('png'), 'a.png');
    const first = still;
    for (const to of [
      'a.tif',
      'a.png',
      'a.tif',
      'a.tif',
      'a.png',
      'a.png',
      'a.tif',
      'a.png',
      'a.tif',
      'a.png',
    ])
      still = await decodeStill((await encodeStill(to, still.picture, still)).bytes, to);
    expect(still.picture).toEqual(first.picture);
    expect(still.profile).toEqual(first.profile);
    expect([still.density, text(still.xmp)]).toEqual([first.density, text(first.xmp)]);
    for (const said of [artist, taken]) expect(text(still.exif)).toContain(said);
  });

  it('says when a JPEG has no room for it', async () => {
    const still = await decodeStill(await fullStill('png'), 'a.png');
    const { bytes, notes } = await encodeStill('a.jpg', still.picture, {
      ...still,
      xmp: new Uint8Array(70_000),
    });
    expect(notes).toEqual(['JPEG has no room for so much XMP, and it was left out; PNG and TIFF keep it']);
    expect((await sharp(bytes).metadata()).xmp).toBeUndefined();
  });

  it('may be a profile over several segments of a JPEG', async () => {
    const long = new Uint8Array(150_000);
    long.set(profile);
    const still = await decodeStill(await fullStill('png'), 'a.png');
    const { bytes } = await encodeStill('a.jpg', still.picture, { profile: long });
    expect(Uint8Array.from((await sharp(bytes).metadata()).icc ?? [])).toEqual(long);
  });

  it('of broken blocks is what can be read, and never a fault', () => {
    const whole = Buffer.from([
      0x49, 0x49, 42, 0, 8, 0, 0, 0, 3, 0, 15, 1, 2, 0, 255, 255, 255, 255, 8, 0, 0, 0,
    ]);
    for (let length = 0; length <= whole.length; length++)
      expect(tagsOfExif(whole.subarray(0, length)).picture).toEqual([]);
    // A directory that leads to itself.
    const circle = Buffer.alloc(30);
    circle.set([0x49, 0x49, 42, 0, 8, 0, 0, 0, 1, 0, 0x69, 0x87, 4, 0, 1, 0, 0, 0, 8, 0, 0, 0]);
    expect(tagsOfExif(circle).picture).toEqual([]);
  });
});
