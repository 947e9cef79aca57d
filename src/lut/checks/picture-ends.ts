import type { CheckContext, Finding } from './finding.js';
import { atMost, channelNames, percent } from './finding.js';
import { evenCodes, greys, pictureRange, throughDevice } from './neutral-axis.js';

/** Steps between black and white at which the output is looked at. */
const steps = 4096;

/** One end of the picture: the output code it piles up in, and how much of it is let do so. */
export interface PictureEnd {
  readonly name: 'highlights' | 'shadows';
  readonly code: 'last' | 'first';
  /** What is said of it when it passes, and when it does not. */
  readonly open: string;
  readonly lost: string;
  /** Whether a grey is lost when one channel has reached the end, or only when all three have. */
  readonly lostWith: 'one channel' | 'all channels';
  /** Share of the way from black to white that may lie in one code, by bits. */
  readonly limits: { readonly 8: number; readonly 10: number };
  /** The same for one channel alone, and for a ramp of one pure colour, at 10 bit. */
  readonly channelLimit: number;
}

/** For each step of a ramp, whether a channel's output lies in the highest or lowest code that it reaches. */
function inEndCode(values: Float64Array, channel: number, bits: number, end: PictureEnd): boolean[] {
  const codes: number[] = [];
  for (let i = channel; i < values.length; i += 3) codes.push(Math.round(values[i] * (2 ** bits - 1)));
  const last = codes.reduce((a, b) => (end.code === 'last' ? Math.max(a, b) : Math.min(a, b)));
  return codes.map((code) => code === last);
}

const shareOf = (marks: readonly boolean[]) => marks.filter(Boolean).length / marks.length;

/** The largest of the three channels' shares, and whose it is. */
function worstOf(shares: readonly number[]) {
  const share = Math.max(...shares);
  return { share, channel: channelNames[shares.indexOf(share)] };
}

/**
 * Between which input codes ends are judged. Where the open gate is named, nothing above it is film: a correction that
 * gives dye back sends the light there beyond 1, and no picture is lost by it.
 */
function judgedRange(context: CheckContext) {
  const { black, white } = pictureRange(context);
  return { black, white: Math.max(black, Math.min(white, context.openGate ?? white)) };
}

function greyFinding(values: Float64Array, bits: 8 | 10, end: PictureEnd, greysAre: string): Finding {
  const marks = channelNames.map((_, c) => inEndCode(values, c, bits, end));
  const worst = worstOf(marks.map(shareOf));
  const together = shareOf(marks[0].map((_, i) => marks.every((mark) => mark[i])));
  const share = end.lostWith === 'one channel' ? worst.share : together;
  const whose = end.lostWith === 'one channel' ? worst.channel : 'red, green and blue together';
  const limit = end.limits[bits];
  const verdict = share <= limit ? end.open : end.lost;
  return atMost({
    name: `${end.name}-${bits}-bit`,
    sentence: `${verdict}: at ${bits} bit the ${end.code} output code takes ${percent(share)} of ${greysAre} (${whose}); limit ${percent(limit)}.`,
    figure: 100 * share,
    limit: 100 * limit,
    unit: '%',
    severity: 'fault',
  });
}

function channelFinding(
  name: string,
  of: (channel: string) => string,
  shares: number[],
  end: PictureEnd,
): Finding {
  const { share, channel } = worstOf(shares);
  return atMost({
    name: `${end.name}-${name}`,
    sentence: `The ${end.code} output code of ${channel} takes ${percent(share)} of ${of(channel)}; limit ${percent(end.channelLimit)}.`,
    figure: 100 * share,
    limit: 100 * end.channelLimit,
    unit: '%',
    severity: 'note',
  });
}

/** Ramps from black to one pure colour, each judged in that colour's channel. */
function pureShares(context: CheckContext, end: PictureEnd): number[] {
  const { black, white } = judgedRange(context);
  const codes = evenCodes(steps, black, white);
  return channelNames.map((_, channel) => {
    const ramp = new Float64Array(3 * steps).fill(black);
    codes.forEach((code, i) => (ramp[3 * i + channel] = code));
    return shareOf(inEndCode(throughDevice(context, ramp), channel, 10, end));
  });
}

/** How much of the way from black to white piles up in one code at an end of the picture. */
export function pileUps(context: CheckContext, end: PictureEnd): Finding[] {
  const { black, white } = judgedRange(context);
  const greysAre = context.openGate === undefined ? 'the greys' : 'the greys up to the open gate';
  const values = throughDevice(context, greys(evenCodes(steps, black, white)));
  const channels = channelNames.map((_, c) => shareOf(inEndCode(values, c, 10, end)));
  return [
    greyFinding(values, 8, end, greysAre),
    greyFinding(values, 10, end, greysAre),
    channelFinding('one-channel', () => `${greysAre} at 10 bit`, channels, end),
    channelFinding('pure-colours', (channel) => `a ramp of pure ${channel}`, pureShares(context, end), end),
  ];
}
