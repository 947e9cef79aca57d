import type { ClipColour } from '../clips/clip-colour.js';
import type { PrimariesName } from '../colour/primaries/index.js';
import type { TransferFunctionName } from '../colour/transfer-functions/index.js';
import type { Signal } from '../jobs/signal.js';

/** Names of ITU-T H.273 (tables 2 and 3), as ffmpeg writes them, of what a look may take and deliver. */
const primariesTags: Readonly<Partial<Record<PrimariesName, string>>> = {
  bt709: 'bt709',
  bt2020: 'bt2020',
  'p3-d65': 'smpte432',
};
const transferTags: Readonly<Partial<Record<TransferFunctionName, string>>> = {
  linear: 'linear',
  srgb: 'iec61966-2-1',
  bt709: 'bt709',
  // BT.1886 is how displays show what BT.709 tags.
  bt1886: 'bt709',
  'gamma-2.2': 'gamma22',
  hlg: 'arib-std-b67',
  pq: 'smpte2084',
};

/** H.273, table 3: functionally the same as BT.709. */
const sameAsBt709: readonly string[] = ['smpte170m', 'bt2020-10', 'bt2020-12'];

type Colours = Pick<Signal, 'encoding' | 'primaries'>;

/** What tags say, or undefined where no standard one does. */
export interface ColourTagNames {
  readonly primaries: string | undefined;
  readonly transfer: string | undefined;
}

/** The tags that name a signal. */
export function tagsOf({ encoding, primaries }: Colours): ColourTagNames {
  return {
    primaries: typeof primaries === 'string' ? primariesTags[primaries] : undefined,
    transfer: typeof encoding === 'string' ? transferTags[encoding] : undefined,
  };
}

const plainTags = ({ primaries, transfer }: ClipColour): ColourTagNames => ({
  primaries,
  transfer: transfer !== undefined && sameAsBt709.includes(transfer) ? 'bt709' : transfer,
});

const nameOf = <Name extends string>(
  tags: Readonly<Partial<Record<Name, string>>>,
  tag: string | undefined,
) => (Object.keys(tags) as Name[]).find((name) => tag !== undefined && tags[name] === tag);

/** What a movie's tags say of its colours, in a look's names; left out what they do not say or no look can take. */
export function coloursTagged(colour: ClipColour): {
  readonly encoding?: TransferFunctionName;
  readonly primaries?: PrimariesName;
} {
  const tags = plainTags(colour);
  const encoding = nameOf(transferTags, tags.transfer);
  const primaries = nameOf(primariesTags, tags.primaries);
  return {
    ...(encoding === undefined ? {} : { encoding }),
    ...(primaries === undefined ? {} : { primaries }),
  };
}

/**
 * Where a movie's tags say otherwise than what its codes are taken as, a clause; undefined where they agree, say nothing,
 * or no standard tag could say it, such as a camera's own log curve.
 */
export function tagsAgainst(colour: ClipColour, taken: Colours): string | undefined {
  const [said, fitting] = [plainTags(colour), tagsOf(taken)];
  const differs = (what: keyof ColourTagNames) =>
    said[what] !== undefined && fitting[what] !== undefined && said[what] !== fitting[what];
  const other = coloursTagged(colour);
  const parts = [
    ...(differs('transfer')
      ? [{ says: `transfer function ${other.encoding ?? said.transfer!}`, as: taken.encoding as string }]
      : []),
    ...(differs('primaries')
      ? [{ says: `primaries ${other.primaries ?? said.primaries!}`, as: taken.primaries as string }]
      : []),
  ];
  if (parts.length === 0) return undefined;
  const list = (words: readonly string[]) => words.join(' and ');
  return `its tags say ${list(parts.map(({ says }) => says))}: taken as ${list(parts.map(({ as }) => as))}`;
}
