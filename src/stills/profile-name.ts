const signature = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

/** A part of the profile. @throws RangeError where it would reach beyond the end */
function part(view: DataView, at: number, length: number): Uint8Array {
  if (at + length > view.byteLength) throw new RangeError('beyond the end of the profile');
  return new Uint8Array(view.buffer, view.byteOffset + at, length);
}

/** Text of a version 2 profile: `desc`, a length, then ASCII ended by a zero. */
function asciiAt(view: DataView, at: number): string {
  return new TextDecoder('latin1').decode(part(view, at + 12, view.getUint32(at + 8)));
}

/** Text of a version 4 profile: `mluc`, the first of its languages, UTF-16. */
function unicodeAt(view: DataView, at: number): string {
  const [length, offset] = [view.getUint32(at + 20), view.getUint32(at + 24)];
  return new TextDecoder('utf-16be').decode(part(view, at + offset, length));
}

/**
 * The name a colour profile gives itself (ICC.1:2010, 9.2.41 profileDescriptionTag), or undefined where it gives none
 * that can be read.
 */
export function profileName(profile: Uint8Array): string | undefined {
  const view = new DataView(profile.buffer, profile.byteOffset, profile.byteLength);
  try {
    const count = view.getUint32(128);
    for (let entry = 132; entry < 132 + 12 * count; entry += 12) {
      if (signature(view, entry) !== 'desc') continue;
      const at = view.getUint32(entry + 4);
      const text = signature(view, at) === 'mluc' ? unicodeAt(view, at) : asciiAt(view, at);
      const name = text.replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ').trim();
      return name === '' ? undefined : name.slice(0, 80);
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error; // it points beyond its own end
  }
  return undefined;
}
