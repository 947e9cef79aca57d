import type { Problem } from './input-error.js';
import { nearestName } from './nearest-name.js';

/** A name that is none of those allowed, with the one that was probably meant. */
export function unknownName(field: string, given: string, names: readonly string[]): Problem {
  const near = nearestName(given, names);
  const shown = given.length > 60 ? `${given.slice(0, 57)}...` : given;
  return {
    field,
    what: `"${shown}" is not known`,
    allowed: names.join(', '),
    ...(near === undefined ? {} : { hint: `Did you mean "${near}"?` }),
  };
}
