/** What a still file holds beside its picture, and that goes along unchanged when the picture is written again. */
export interface Carried {
  /** The colour profile (ICC); nothing is converted by it. */
  readonly profile?: Uint8Array;
  /** Camera, date, exposure: a block of tags in the form of a TIFF (JEITA CP-3451, Exif 2.3). */
  readonly exif?: Uint8Array;
  /** An XMP packet, UTF-8 (ISO 16684-1:2012). */
  readonly xmp?: Uint8Array;
  /** Pixels an inch. */
  readonly density?: number;
}

/** Bytes of ASCII text. */
export const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** A big-endian number of two or four bytes. */
export function bigEndian(value: number, size: 2 | 4): Uint8Array {
  const view = new DataView(new ArrayBuffer(size));
  if (size === 2) view.setUint16(0, value);
  else view.setUint32(0, value);
  return new Uint8Array(view.buffer);
}
