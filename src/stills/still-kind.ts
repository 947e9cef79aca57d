/** The formats a still may have, with the bytes each begins with. */
const beginnings = {
  png: [[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  jpeg: [[0xff, 0xd8, 0xff]],
  tiff: [
    [0x49, 0x49, 42, 0],
    [0x4d, 0x4d, 0, 42],
    [0x49, 0x49, 43, 0],
    [0x4d, 0x4d, 0, 43],
  ],
} as const satisfies Record<string, readonly (readonly number[])[]>;

export type StillKind = keyof typeof beginnings;

/** What a file is by its first bytes, whatever its name says; undefined when it is none of the formats. */
export function stillKind(bytes: Uint8Array): StillKind | undefined {
  const kinds = Object.entries(beginnings) as [StillKind, readonly (readonly number[])[]][];
  return kinds.find(([, marks]) => marks.some((mark) => mark.every((byte, i) => bytes[i] === byte)))?.[0];
}
