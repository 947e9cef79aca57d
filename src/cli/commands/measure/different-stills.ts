import { InputError } from '../../../errors/input-error.js';
import type { Still } from '../../../measure/index.js';
import type { Picture } from '../../../picture/picture.js';

const isSame = (a: Picture, b: Picture): boolean =>
  a.width === b.width &&
  a.height === b.height &&
  a.channels === b.channels &&
  a.bits === b.bits &&
  a.data.every((code, i) => code === b.data[i]);

/** @throws InputError where two stills show the very same pixels: the second would count as evidence, and is none */
export function requireDifferent(stills: readonly Still[]): void {
  stills.forEach(({ name, picture }, i) => {
    const other = stills.slice(0, i).find((before) => isSame(before.picture, picture));
    if (other !== undefined)
      throw new InputError({
        file: name,
        what: `is the same picture as ${other.name === name ? 'one before' : other.name}`,
        hint: 'Give each still once.',
      });
  });
}
