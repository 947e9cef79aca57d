import { frameNamed } from '../clips/clip-name.js';
import type { ColourChoice } from '../clips/clip-colour.js';
import { fromFull } from '../colour/signal-range.js';
import type { Signal } from '../jobs/signal.js';
import { hasAlpha, lastCode, type Picture } from '../picture/picture.js';
import type { Still } from '../stills/read-still.js';
import { tagsAgainst } from './colour-tags.js';
import { openClip, openStill } from './open-still.js';

/** Full-range codes as a device of legal range has them; alpha stays. */
function intoLegal(picture: Picture): Picture {
  const last = lastCode(picture.bits);
  const colours = hasAlpha(picture) ? picture.channels - 1 : picture.channels;
  const data = picture.data.map((code, i) =>
    i % picture.channels < colours ? Math.round(last * fromFull(code / last)) : code,
  );
  return { ...picture, data };
}

/**
 * Opens a still whose codes are to be those of a look's signal. A frame of a movie comes as full range, whatever the movie
 * holds: for a look of legal range it is put back into that. Where the movie's tags say otherwise than the look takes, a note
 * says so.
 * @throws InputError as openStill
 */
export async function openStillFor(signal: Signal, name: string, choice: ColourChoice = {}): Promise<Still> {
  const still = await openStill(name, choice);
  const frame = await frameNamed(name);
  if (frame === undefined) return still;
  const against = tagsAgainst((await openClip(frame.clip, choice)).colour, signal);
  return {
    ...still,
    picture: signal.range === 'full' ? still.picture : intoLegal(still.picture),
    notes: against === undefined ? still.notes : [...still.notes, against],
  };
}
