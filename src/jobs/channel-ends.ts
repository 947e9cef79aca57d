import { channelEnds, endMask, type LitStill } from '../capture/still-light.js';
import { shareText } from '../capture/exposure-text.js';
import type { Hatching } from '../preview/clipping-marks.js';
import { palette } from '../preview/palette.js';
import type { LegendEntry, SheetMark } from '../preview/report-sheet.js';

/** A channel's marks: told apart by the way their lines run and where their dots lie, not only by their colour. */
interface ChannelMark {
  readonly name: string;
  readonly burntOut: { readonly ink: SheetMark['ink']; readonly hatching: Hatching };
  readonly blocked: { readonly ink: SheetMark['ink']; readonly hatching: Hatching };
}

/** Dots in rows, each channel's beside the others'. */
const dots =
  (shift: number): Hatching =>
  (x, y) =>
    y % 9 < 2 && (x + shift) % 9 < 2;

export const channelMarks = [
  {
    name: 'red',
    burntOut: { ink: palette.redOver, hatching: (x, y) => (x + y) % 12 < 2 },
    blocked: { ink: palette.red, hatching: dots(0) },
  },
  {
    name: 'green',
    burntOut: { ink: palette.greenOver, hatching: (x, y) => (x - y + 12000) % 12 < 2 },
    blocked: { ink: palette.green, hatching: dots(3) },
  },
  {
    name: 'blue',
    burntOut: { ink: palette.blueOver, hatching: (_, y) => y % 12 < 2 },
    blocked: { ink: palette.blue, hatching: dots(6) },
  },
] as const satisfies readonly ChannelMark[];

const beds = { burntOut: palette.burntOutBed, blocked: palette.blockedBed } as const;
const words = { burntOut: 'burnt out', blocked: 'blocked' } as const;

/** Marks over a still where a channel has ended, with a legend of those that there are. */
export function channelEndMarks(still: LitStill): { marks: SheetMark[]; legend: LegendEntry[] } {
  const ends = channelEnds(still);
  const found = (['burntOut', 'blocked'] as const).flatMap((end) =>
    ([0, 1, 2] as const).flatMap((channel) => {
      const percent = ends[channel][`${end}Percent`];
      if (percent === 0) return [];
      const { name, [end]: drawn } = channelMarks[channel];
      return [
        {
          mark: { ...drawn, mask: endMask(still, channel, end) },
          entry: { ...drawn, bed: beds[end], text: `${name} ${words[end]} ${shareText(percent)} %` },
        },
      ];
    }),
  );
  return { marks: found.map(({ mark }) => mark), legend: found.map(({ entry }) => entry) };
}
