import { atLeast, type Finding, percent } from '../lut/checks/finding.js';
import type { LutFile } from '../lut/formats/lut-format.js';
import { comesBackWithin } from '../lut/inverse/losses.js';
import { provenanceKeys } from './build-look.js';

/** Share of all colours up to which a way back counts as good: then 95 % come back within the limit. */
export const mostLost = 0.05;

/** What a way back's file says of itself. @param lost share of all colours that does not come back, 0..1 */
export const comesBackText = (lost: number): string =>
  `${Number((100 * (1 - lost)).toFixed(4))} % of all colours within ${comesBackWithin} codes of 255`;

/** The question that only a way back is asked, as its file answers it; undefined where it does not say. */
export function comesBackFinding({ comments }: Pick<LutFile, 'comments'>): Finding | undefined {
  const said = new Map(comments).get(provenanceKeys.comesBack) ?? '';
  const share = /^(\d{1,3}(?:\.\d{1,4})?) % of all colours within /.exec(said)?.[1];
  if (share === undefined) return undefined;
  const [figure, limit] = [Number(share) / 100, 1 - mostLost];
  return atLeast({
    name: 'comes-back',
    sentence: `Of all colours ${percent(figure)} come back within ${comesBackWithin} codes of 255, as gatelight undo measured; limit ${percent(limit)}.`,
    figure,
    limit,
    unit: '',
    severity: 'fault',
  });
}
