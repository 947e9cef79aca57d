import type { Picture } from '../picture/picture.js';

const isSame = (a: Picture, b: Picture): boolean =>
  a.width === b.width &&
  a.height === b.height &&
  a.channels === b.channels &&
  a.bits === b.bits &&
  a.data.every((code, i) => code === b.data[i]);

/** The stills that show the very same pixels as one before: their names, and that in words without a full stop. */
export const repeatedStills = (
  stills: readonly { readonly name: string; readonly picture: Picture }[],
): { name: string; what: string }[] =>
  stills.flatMap(({ name, picture }, i) => {
    const other = stills.slice(0, i).find((before) => isSame(before.picture, picture));
    if (other === undefined) return [];
    return [{ name, what: `is the same picture as ${other.name === name ? 'one before' : other.name}` }];
  });
