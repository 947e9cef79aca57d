import { InputError } from '../../errors/input-error.js';
import { sourceOfBytes } from '../../stills/byte-source.js';
import { maxPixels } from '../../stills/limits.js';
import type { StillKind } from '../../stills/still-kind.js';
import { readTiffTags } from '../../stills/tiff-tags.js';

type Size = readonly [width: number, height: number];

const viewOf = (bytes: Uint8Array) => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** The first chunk of a PNG, IHDR (ISO/IEC 15948). */
function pngSize(bytes: Uint8Array): Size {
  return [viewOf(bytes).getUint32(16), viewOf(bytes).getUint32(20)];
}

/** Whether a JPEG marker starts a frame: C0 to CF but for tables and arithmetic conditioning (ISO/IEC 10918-1). */
const startsFrame = (marker: number) =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function jpegSize(bytes: Uint8Array): Size {
  const view = viewOf(bytes);
  for (let at = 2; ;) {
    if (view.getUint8(at) !== 0xff) throw new RangeError('no marker');
    const marker = view.getUint8(at + 1);
    if (startsFrame(marker)) return [view.getUint16(at + 7), view.getUint16(at + 5)];
    at += marker === 0xff ? 1 : 2 + view.getUint16(at + 2);
  }
}

function tiffSize(bytes: Uint8Array): Size {
  const found = readTiffTags(sourceOfBytes(bytes));
  return [found.get(256) ?? 0, found.get(257) ?? 0];
}

const sizes: Readonly<Record<StillKind, (bytes: Uint8Array) => Size>> = {
  png: pngSize,
  jpeg: jpegSize,
  tiff: tiffSize,
};

/**
 * Refuses a still by the size its header claims, before anything is decoded.
 * @throws InputError when there are too many pixels, or no size
 */
export function requireUsualSize(kind: StillKind, bytes: Uint8Array, file: string): void {
  let size: Size = [0, 0];
  try {
    size = sizes[kind](bytes);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  const [width, height] = size;
  if (!(width > 0 && height > 0))
    throw new InputError({ file, what: 'is damaged or cut short', hint: 'Copy it from the camera again.' });
  if (width * height > maxPixels)
    throw new InputError({
      file,
      what: `has ${width} x ${height} pixels`,
      allowed: `${maxPixels / 1e6} megapixels at most`,
      hint: 'Make it smaller first.',
    });
}
