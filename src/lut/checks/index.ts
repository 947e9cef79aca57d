// checks/ knows what makes a LUT fit to be burnt in, one question a file. It must not know how the LUT was made,
// nor change it.

import { banding } from './banding.js';
import { endPoints } from './end-points.js';
import type { Check, CheckContext, Finding } from './finding.js';
import { foldOvers } from './fold-overs.js';
import { highlights } from './highlights.js';
import { latticeError } from './lattice-error.js';
import { midGreyContrast } from './mid-grey-contrast.js';
import { neutralRises } from './neutral-rises.js';
import { outputRange } from './output-range.js';
import { shadows } from './shadows.js';
import { size } from './size.js';
import { structure } from './structure.js';
import { warmth } from './warmth.js';

export type { Check, CheckContext, Finding } from './finding.js';

/** Every question, in the order in which it is answered. */
export const checks = {
  structure,
  size,
  outputRange,
  neutralRises,
  foldOvers,
  highlights,
  shadows,
  endPoints,
  banding,
  latticeError,
  warmth,
  midGreyContrast,
} satisfies Record<string, Check>;

/**
 * Asks a LUT every question. A table that is no table of numbers is asked no more than that.
 * The LUT is good when no finding of severity `fault` fails.
 */
export function checkLut(context: CheckContext): Finding[] {
  const first = structure.ask(context);
  if (first.some(({ pass, severity }) => !pass && severity === 'fault')) return [...first];
  return Object.values(checks).flatMap((check) => check.ask(context));
}
