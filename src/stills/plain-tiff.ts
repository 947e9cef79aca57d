import { colourChannels, hasAlpha } from '../picture/picture.js';
import type { Picture } from '../picture/picture.js';

const [short, long, undefinedBytes] = [3, 4, 7];

type Entry = readonly [tag: number, type: number, values: readonly number[] | Uint8Array];

const sizeOf = ([, type, values]: Entry): number =>
  values.length * (type === short ? 2 : type === long ? 4 : 1);

function writeValues(view: DataView, at: number, [, type, values]: Entry): void {
  values.forEach((value, i) => {
    if (type === short) view.setUint16(at + 2 * i, value, true);
    else if (type === long) view.setUint32(at + 4 * i, value, true);
    else view.setUint8(at + i, value);
  });
}

/** The entries in ascending order, as TIFF asks; the picture's data begins at `dataAt`. */
function entriesOf(picture: Picture, profile: Uint8Array | undefined, dataAt: number): Entry[] {
  const { width, height, channels, bits, data } = picture;
  const entries: Entry[] = [
    [256, long, [width]],
    [257, long, [height]],
    [258, short, Array<number>(channels).fill(bits)],
    [259, short, [1]], // not compressed
    [262, short, [colourChannels(picture) === 1 ? 1 : 2]], // grey with black as 0, or RGB
    [273, long, [dataAt]],
    [277, short, [channels]],
    [278, long, [height]],
    [279, long, [data.byteLength]],
  ];
  if (hasAlpha(picture)) entries.push([338, short, [2]]); // straight alpha
  if (profile !== undefined) entries.push([34675, undefinedBytes, profile]);
  return entries;
}

/**
 * A picture as an uncompressed TIFF (TIFF 6.0, 1992, little-endian, one strip), with a colour profile (ICC.1:2010, annex B.4).
 * It carries exact codes and profile to the encoder, which takes a profile from a file only.
 */
export function plainTiff(picture: Picture, profile?: Uint8Array): Uint8Array {
  const count = entriesOf(picture, profile, 0).length;
  const values = 8 + 2 + 12 * count + 4;
  const even = (length: number) => length + (length % 2);
  const far = (entry: Entry) => (sizeOf(entry) > 4 ? even(sizeOf(entry)) : 0);
  const dataAt = entriesOf(picture, profile, 0).reduce((at, entry) => at + far(entry), even(values));
  const bytes = new Uint8Array(dataAt + picture.data.byteLength);
  const view = new DataView(bytes.buffer);
  bytes.set([0x49, 0x49, 42, 0, 8, 0, 0, 0, count, 0]);
  let place = even(values);
  entriesOf(picture, profile, dataAt).forEach((entry, i) => {
    const at = 10 + 12 * i;
    view.setUint16(at, entry[0], true);
    view.setUint16(at + 2, entry[1], true);
    view.setUint32(at + 4, entry[2].length, true);
    if (far(entry) > 0) view.setUint32(at + 8, place, true);
    writeValues(view, far(entry) > 0 ? place : at + 8, entry);
    place += far(entry);
  });
  // Typed arrays keep the machine's byte order: little-endian wherever the decoder is built for.
  const { buffer, byteOffset, byteLength } = picture.data;
  bytes.set(new Uint8Array(buffer, byteOffset, byteLength), dataAt);
  return bytes;
}
