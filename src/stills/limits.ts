/** The largest still, in pixels: twice what the largest common sensors give. Read from the header, before decoding. */
export const maxPixels = 120_000_000;

/** The same in floating point, which takes more memory. */
export const maxFloatPixels = 60_000_000;

/** The largest file: such a still, uncompressed, RGBA at 16 bits, with room for what is written beside the picture. */
export const maxStillBytes = maxPixels * 8 + 64_000_000;
