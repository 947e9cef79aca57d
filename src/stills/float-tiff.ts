import type { FloatPicture } from '../picture/float-picture.js';
import { ascii } from './carried/carried.js';
import { directoryBytes, type Entry, longEntry } from './tiff-directory.js';

/** Bytes in front of the picture: the file's header. */
const headBytes = 8;

const shortsEntry = (tag: number, values: readonly number[]): Entry => {
  const bytes = new Uint8Array(2 * values.length);
  const view = new DataView(bytes.buffer);
  values.forEach((value, i) => view.setUint16(2 * i, value, true));
  return { tag, type: 3, count: values.length, bytes };
};

/** Numbers of 32 bits, least byte first, as this machine has them or turned round. */
function littleEndian(data: Float32Array): Uint8Array {
  const bytes = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  if (new Uint8Array(Uint16Array.of(1).buffer)[0] === 1) return bytes;
  const out = new Uint8Array(bytes.length);
  const view = new DataView(out.buffer);
  data.forEach((value, i) => view.setFloat32(4 * i, value, true));
  return out;
}

/**
 * A picture in floating point as a TIFF (6.0, 1992), not packed: the lower bits of such numbers are noise, which no packing
 * makes smaller.
 * @returns the file in pieces, one after the other
 */
export function floatTiff({ width, height, channels, data }: FloatPicture): Uint8Array[] {
  const [unpacked, blackIsZero, rgb, chunky, straight, floats] = [1, 1, 2, 1, 2, 3];
  const picture = littleEndian(data);
  const entries: Entry[] = [
    longEntry(256, width),
    longEntry(257, height),
    shortsEntry(258, Array<number>(channels).fill(32)),
    shortsEntry(259, [unpacked]),
    shortsEntry(262, [channels === 1 ? blackIsZero : rgb]),
    longEntry(273, headBytes),
    shortsEntry(277, [channels]),
    longEntry(278, height),
    longEntry(279, picture.length),
    shortsEntry(284, [chunky]),
    ...(channels === 4 ? [shortsEntry(338, [straight])] : []),
    shortsEntry(339, Array<number>(channels).fill(floats)),
  ];
  const at = headBytes + picture.length;
  const head = new Uint8Array(headBytes);
  head.set(ascii('II*'));
  new DataView(head.buffer).setUint32(4, at, true);
  return [head, picture, directoryBytes(entries, at)];
}
