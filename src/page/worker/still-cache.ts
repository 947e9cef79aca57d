import type { Picture } from '../../picture/picture.js';

/** Bytes of decoded stills kept at a time; the rest is decoded again when it is wanted. */
const mostBytes = 400_000_000;

/**
 * Decoded stills by name, the least recently used given up first. The one asked for last is always kept.
 * @param decode what to do for a still that is not there
 */
export function stillCache(decode: (id: string) => Promise<Picture>) {
  const kept = new Map<string, Picture>();
  const size = () => [...kept.values()].reduce((sum, { data }) => sum + data.byteLength, 0);

  function keep(id: string, picture: Picture): void {
    kept.delete(id);
    kept.set(id, picture);
    for (const [oldest] of kept) {
      if (oldest === id || size() <= mostBytes) break;
      kept.delete(oldest);
    }
  }

  async function get(id: string): Promise<Picture> {
    const picture = kept.get(id) ?? (await decode(id));
    keep(id, picture);
    return picture;
  }

  return { keep, get };
}
