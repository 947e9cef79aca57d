// Images in memory: code values as they were written, their counting and drawing. Knows nothing of films, looks,
// colour spaces or files: a code value here is a number, and 0..100 % of a scale means 0..the last code.

/**
 * An image: interleaved code values, row by row from the top left. Channels are grey, grey + alpha, RGB or RGBA;
 * alpha is straight (not multiplied into the colours). `data` is a Uint8Array at 8 bits, a Uint16Array at 16.
 */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 2 | 3 | 4;
  readonly bits: 8 | 16;
  readonly data: Uint8Array | Uint16Array;
}

/** What a picture is made of, apart from its size. */
export type PictureKind = Pick<Picture, 'channels' | 'bits'>;

/** The last code value: 255 or 65535. */
export const lastCode = (bits: Picture['bits']): number => (bits === 8 ? 255 : 65535);

export const hasAlpha = ({ channels }: Pick<Picture, 'channels'>): boolean =>
  channels === 2 || channels === 4;

/** Channels that carry colour: 1 (grey) or 3. */
export const colourChannels = ({ channels }: Pick<Picture, 'channels'>): 1 | 3 => (channels <= 2 ? 1 : 3);

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value > 0;
}

/**
 * A picture of the given size, black (and transparent) unless `data` is given. The data is kept, not copied.
 * @throws RangeError when size, channels, depth and data do not agree: a fault of the caller, not of a user
 */
export function makePicture(
  width: number,
  height: number,
  { channels, bits }: PictureKind,
  data?: Uint8Array | Uint16Array,
): Picture {
  if (!isCount(width) || !isCount(height)) throw new RangeError(`a picture cannot be ${width} x ${height}`);
  if (![1, 2, 3, 4].includes(channels)) throw new RangeError(`a picture cannot have ${channels} channels`);
  if (bits !== 8 && bits !== 16) throw new RangeError(`a picture cannot have ${String(bits)} bits`);
  const length = width * height * channels;
  const codes = data ?? (bits === 8 ? new Uint8Array(length) : new Uint16Array(length));
  if (codes.length !== length) throw new RangeError(`${codes.length} code values where ${length} are needed`);
  if (codes.BYTES_PER_ELEMENT * 8 !== bits)
    throw new RangeError(`${bits}-bit codes in an array of another depth`);
  return { width, height, channels, bits, data: codes };
}

/** Grey becomes RGB with three equal channels, grey + alpha becomes RGBA; colour is returned as it is. */
export function expandGrey(picture: Picture): Picture {
  if (picture.channels > 2) return picture;
  const { width, height, bits, data } = picture;
  const alpha = picture.channels === 2;
  const out = makePicture(width, height, { channels: alpha ? 4 : 3, bits });
  for (let from = 0, to = 0; from < data.length; from += picture.channels, to += out.channels) {
    out.data[to] = out.data[to + 1] = out.data[to + 2] = data[from];
    if (alpha) out.data[to + 3] = data[from + 1];
  }
  return out;
}

/**
 * The same picture at another depth. 8 to 16 bits is exact (times 257, so that the last code stays the last code);
 * 16 to 8 bits rounds to the nearest and undoes it.
 */
export function changeDepth(picture: Picture, bits: Picture['bits']): Picture {
  if (picture.bits === bits) return picture;
  const { width, height, channels, data } = picture;
  const codes = bits === 16 ? new Uint16Array(data.length) : new Uint8Array(data.length);
  for (let i = 0; i < data.length; i++) codes[i] = bits === 16 ? data[i] * 257 : Math.round(data[i] / 257);
  return makePicture(width, height, { channels, bits }, codes);
}

/** Whether red, green and blue differ anywhere. */
export function hasColour(picture: Picture): boolean {
  if (colourChannels(picture) === 1) return false;
  const { data, channels } = picture;
  for (let i = 0; i < data.length; i += channels)
    if (data[i] !== data[i + 1] || data[i] !== data[i + 2]) return true;
  return false;
}
