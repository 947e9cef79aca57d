import { InputError, type Problem } from '../../errors/input-error.js';
import type { Chromaticity, Primaries } from './primaries.js';

type Chromaticities = Pick<Primaries, 'red' | 'green' | 'blue' | 'white'>;

/** Twice the area of a triangle, positive when its corners run counterclockwise. */
const area = (a: Chromaticity, b: Chromaticity, c: Chromaticity) =>
  (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);

function problemsOf({ red, green, blue, white }: Chromaticities): Problem[] {
  const named = Object.entries({ red, green, blue, white });
  const notNumbers = named.filter(([, xy]) => xy.length !== 2 || !xy.every(Number.isFinite));
  if (notNumbers.length > 0)
    return notNumbers.map(([field]) => ({
      field,
      what: 'not a chromaticity',
      allowed: 'two numbers, x and y',
    }));
  if (!(area(red, green, blue) > 1e-6))
    return [
      {
        field: 'red',
        what: 'red, green and blue span no triangle',
        allowed: 'x y of CIE 1931, in this order',
      },
    ];
  const inside = [area(red, green, white), area(green, blue, white), area(blue, red, white)].every(
    (a) => a > 0,
  );
  if (!inside || !(white[1] > 0))
    return [
      {
        field: 'white',
        what: 'the white lies outside its primaries',
        allowed: 'x y between red, green and blue',
      },
    ];
  return [];
}

/**
 * Primaries by their chromaticities (CIE 1931 x y), such as a camera's maker publishes.
 * @throws InputError when they span no triangle or the white lies outside it
 */
export function customPrimaries(
  chromaticities: Chromaticities,
  {
    title = 'custom primaries',
    source = 'given as chromaticities',
  }: { title?: string; source?: string } = {},
): Primaries {
  const problems = problemsOf(chromaticities);
  if (problems.length > 0) throw new InputError(problems);
  const { red, green, blue, white } = chromaticities;
  return { title, source, red, green, blue, white };
}
