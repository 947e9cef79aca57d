import { comesBackWithin, families, levels, type Loss, losses, type Region } from '../lut/inverse.js';
import { mostLost } from './comes-back.js';
import type { WayBack } from './undo-look.js';

/** A share in per cent, as few digits as say it. */
export function percent(share: number): string {
  const value = 100 * share;
  if (value === 0) return 'none';
  if (value < 0.1) return 'less than 0.1 %';
  return `${value < 9.95 ? value.toFixed(1) : value.toFixed(0)} %`;
}

const codes = (value: number) => value.toFixed(value < 9.95 ? 1 : 0);

/** What each loss is called in a sentence. */
export const lossNames = {
  'burnt-out': 'burnt out',
  blocked: 'blocked',
  folded: 'folded over',
  squeezed: 'squeezed',
  coarse: 'off between the points',
} as const satisfies Record<Loss, string>;

/** Share of a region's colours below which it is not worth a word. */
const littleLost = 0.005;

function cell({ p95, lost }: Region): string {
  return lost < littleLost ? codes(p95) : `${codes(p95)} (${percent(lost)})`;
}

/** The map of what comes back, region by region, in lines of one width. */
export function regionLines({ trip: { regions } }: WayBack): string[] {
  const [first, width] = [11, 15];
  const row = (name: string, cells: readonly string[]) =>
    name.padEnd(first) + cells.map((text) => text.padStart(width)).join('');
  return [
    row('', levels),
    ...families.map((family) =>
      row(
        family,
        levels.map((level) => cell(regions.find((r) => r.level === level && r.family === family)!)),
      ),
    ),
  ];
}

/** The regions in which most is lost for a cause, worst first. */
function where(loss: Loss, regions: readonly Region[]): string {
  const worst = regions
    .filter(({ byCause }) => byCause[loss] >= littleLost)
    .sort((a, b) => b.byCause[loss] - a.byCause[loss])
    .slice(0, 3)
    .map(({ level, family, byCause }) => `${family} in the ${level} (${percent(byCause[loss])} of them)`);
  return worst.length === 0 ? '' : ` Most of it: ${worst.join(', ')}.`;
}

export const sentenceStart = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** One sentence or two for each cause that is met. */
export function lossSentences({ trip: { byCause, regions } }: WayBack): string[] {
  return (Object.keys(losses) as Loss[])
    .filter((loss) => byCause[loss] > 0)
    .map(
      (loss) =>
        `${sentenceStart(lossNames[loss])}, ${percent(byCause[loss])}: ${losses[loss]}.${where(loss, regions)}`,
    );
}

export const comesBack = ({ trip }: WayBack): boolean => trip.lost <= mostLost;

/** The finding in one sentence. */
export function wayBackSentence({ trip: { median, p95, lost } }: WayBack): string {
  return (
    `Of all colours, half come back within ${codes(median)} codes of 255 and 95 % within ${codes(p95)}; ` +
    `${lost === 0 ? 'none is' : `${percent(lost)} are`} off by more than ${comesBackWithin}.`
  );
}

/** A difference of the two round trips, in codes, that is worth a sentence. */
const cutMatters = 0.5;

/** What a device makes of it that cuts the table's values to 0..1; undefined where that is the same. */
export function cutSentence({ trip, cutTrip }: WayBack): string | undefined {
  if (cutTrip.p95 - trip.p95 < cutMatters) return undefined;
  return (
    `Some values of the table lie beyond 0 to 1. A device that cuts them brings 95 % back within ${codes(cutTrip.p95)} ` +
    `codes (${percent(cutTrip.lost)} are off by more than ${comesBackWithin}); --clamp writes the table so.`
  );
}
