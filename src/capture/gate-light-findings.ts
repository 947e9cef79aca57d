import type { Triple } from '../maths/matrix3.js';
import type { Evenness, Exposure, GateLight, LightBalance } from './gate-light.js';

/** What one look at a shoot says: good, worth knowing, or to be put right before the reel runs. */
export type Verdict = 'good' | 'note' | 'fault';

export interface CaptureFinding {
  readonly name: string;
  readonly verdict: Verdict;
  /** What was found and what to do, whole sentences. */
  readonly sentence: string;
}

/**
 * Up to `good` nobody sees it; up to `note` a white balance takes it away without harm; beyond it is better put right at
 * the lamp. Five mired are about what is just seen between two lights (common practice, no source; so are the rest).
 */
const limits = {
  mired: { good: 5, note: 25 },
  duv: { good: 0.002, note: 0.006 },
  cornerStops: { good: 0.15, note: 0.5 },
  colourDrift: { good: 0.004, note: 0.01 },
  /** Stops that an open gate may lie below the end of the scale. */
  headroomStops: { good: 0.7 },
} as const;

/** Beyond this distance from Planck's locus a colour temperature says nothing (CIE 15:2004, section 9.5). */
const farFromLocus = 0.05;

const channelNames = ['red', 'green', 'blue'] as const;

function verdictOf(value: number, { good, note }: { good: number; note: number }): Verdict {
  return value <= good ? 'good' : value <= note ? 'note' : 'fault';
}

const worse = (a: Verdict, b: Verdict): Verdict => {
  const order: Verdict[] = ['good', 'note', 'fault'];
  return order[Math.max(order.indexOf(a), order.indexOf(b))];
};

/** Stops to two decimals with their sign; never `-0.00`. */
const stopsText = (stops: number) =>
  `${stops >= 0.005 ? '+' : ''}${(Math.round(100 * stops) / 100 + 0).toFixed(2)}`;

const kelvinText = (kelvin: number) => `${Math.round(kelvin)} K`;

/** How far off, in words: `12 mired too warm and 0.004 too green (Duv)`. */
function offsetText({ miredShift, duvShift }: LightBalance): string {
  const warmth = `${Math.abs(miredShift).toFixed(0)} mired too ${miredShift > 0 ? 'warm (red)' : 'cool (blue)'}`;
  const tint = `${Math.abs(duvShift).toFixed(4)} Duv too ${duvShift > 0 ? 'green' : 'pink (magenta)'}`;
  const parts = [
    ...(Math.abs(miredShift) > limits.mired.good ? [warmth] : []),
    ...(Math.abs(duvShift) > limits.duv.good ? [tint] : []),
  ];
  return parts.join(' and ');
}

/** Which way to turn what, one sentence. */
function turnText({ miredShift, duvShift, whiteKelvin }: LightBalance): string {
  const lamp = miredShift > 0 ? 'cooler (bluer, more kelvin)' : 'warmer (redder, fewer kelvin)';
  const filter = duvShift > 0 ? 'pinker (minus green)' : 'greener (plus green)';
  const turns = [
    ...(Math.abs(miredShift) > limits.mired.good
      ? [`turn the lamp ${lamp} by ${Math.abs(miredShift).toFixed(0)} mired`]
      : []),
    ...(Math.abs(duvShift) > limits.duv.good ? [`filter it ${filter}`] : []),
  ];
  return (
    `Set the camera's white balance on this open gate; if it cannot reach, or you keep ${kelvinText(whiteKelvin)}, ` +
    `${turns.join(' and ')}.`
  );
}

function balanceFinding(balance: LightBalance | undefined): CaptureFinding {
  const name = 'white balance';
  if (balance === undefined)
    return {
      name,
      verdict: 'fault',
      sentence:
        'The middle is burnt out or dark: its colour cannot be read. Change the exposure and take the still again.',
    };
  const { miredShift, duvShift, kelvin, whiteKelvin } = balance;
  const far = Math.abs(duvShift) > farFromLocus;
  const reads = far
    ? 'The light is too strongly coloured to have a colour temperature.'
    : `The light reads as ${kelvinText(kelvin)}, the camera's white as ${kelvinText(whiteKelvin)}.`;
  const verdict = worse(
    verdictOf(Math.abs(miredShift), limits.mired),
    verdictOf(Math.abs(duvShift), limits.duv),
  );
  if (verdict === 'good')
    return { name, verdict, sentence: `${reads} They agree as nearly as anyone can see.` };
  if (far)
    return {
      name,
      verdict,
      sentence: `${reads} It is far too ${duvShift > 0 ? 'green' : 'pink (magenta)'}. Is this the open gate, without film or filter?`,
    };
  return { name, verdict, sentence: `${reads} It is ${offsetText(balance)}. ${turnText(balance)}` };
}

/** A place in the frame in words, from shares of its sides. */
function placeText({ across, down }: Evenness['hotSpot']): string {
  const third = (share: number, low: string, high: string) => (share < 0.4 ? low : share > 0.6 ? high : '');
  const words = [third(down, 'upper', 'lower'), third(across, 'left', 'right')].filter((word) => word !== '');
  const side = (share: number, low: string, high: string) =>
    Math.abs(share - 0.5) < 0.005
      ? ''
      : `${Math.abs(100 * (share - 0.5)).toFixed(0)} % ${share < 0.5 ? low : high}`;
  const offset = [side(across, 'left', 'right'), side(down, 'up', 'down')].filter((word) => word !== '');
  const from = offset.length === 0 ? '' : ` (${offset.join(', ')} of the middle)`;
  return words.length === 0 ? `in the middle${from}` : `${words.join(' ')}${from}`;
}

function evennessFinding(evenness: Evenness | undefined): CaptureFinding {
  const name = 'evenness';
  if (evenness === undefined)
    return {
      name,
      verdict: 'fault',
      sentence:
        'Parts are burnt out or dark: how even the light is cannot be read. Change the exposure and take the still again.',
    };
  const { corners, hotSpot, spreadStops } = evenness;
  const { topLeft, topRight, bottomLeft, bottomRight } = corners;
  const verdict = verdictOf(spreadStops, limits.cornerStops);
  const figures =
    `Corners against the brightest part, in stops: top left ${stopsText(topLeft)}, top right ${stopsText(topRight)}, ` +
    `bottom left ${stopsText(bottomLeft)}, bottom right ${stopsText(bottomRight)}; darkest part ${stopsText(-spreadStops)}.`;
  if (verdict === 'good') return { name, verdict, sentence: `The light is even. ${figures}` };
  return {
    name,
    verdict,
    sentence: `The light is brightest ${placeText(hotSpot)}. ${figures} Centre the lamp, or move the diffuser further from the gate.`,
  };
}

function driftFinding({ colourDrift }: Evenness): CaptureFinding {
  const verdict = verdictOf(colourDrift, limits.colourDrift);
  const figure = `${colourDrift.toFixed(4)} in u'v'`;
  return {
    name: 'evenness of colour',
    verdict,
    sentence:
      verdict === 'good'
        ? `The light has one colour across the frame (at most ${figure}).`
        : `The colour of the light changes across the frame by up to ${figure}. No look can put that right: mix the light better.`,
  };
}

const percents = (values: Triple) =>
  values
    .map((value, c) => `${channelNames[c]} ${value.toFixed(value > 0 && value < 0.1 ? 3 : 1)} %`)
    .join(', ');

function exposureFinding({
  stopsLeft,
  firstToClip,
  burntOutPercent,
  blockedPercent,
}: Exposure): CaptureFinding {
  const name = 'exposure';
  const channel = channelNames[firstToClip];
  if (Math.min(...blockedPercent) > 50 && Math.max(...burntOutPercent) === 0)
    return { name, verdict: 'fault', sentence: 'The gate is dark: there is no light to be measured.' };
  if (stopsLeft === undefined)
    return {
      name,
      verdict: 'fault',
      sentence: `Burnt out (${percents(burntOutPercent)}), and nothing is left to tell how far. Go down by a stop or more and take the still again.`,
    };
  if (stopsLeft <= 0)
    return {
      name,
      verdict: 'fault',
      sentence: `Burnt out (${percents(burntOutPercent)}). The highest exposure with no clipped channel lies about ${Math.max(0.1, -stopsLeft).toFixed(1)} stops down; ${channel} clips first.`,
    };
  const room = `The highest exposure with no clipped channel lies ${stopsLeft.toFixed(2)} stops up; ${channel} clips first.`;
  if (stopsLeft <= limits.headroomStops.good) return { name, verdict: 'good', sentence: room };
  return {
    name,
    verdict: 'note',
    sentence: `${room} The open gate is the brightest thing a reel can show: use the room.`,
  };
}

/** What a measured gate light means and what to do about it, one finding a question. */
export function gateLightFindings({ balance, evenness, exposure }: GateLight): CaptureFinding[] {
  return [
    exposureFinding(exposure),
    balanceFinding(balance),
    evennessFinding(evenness),
    ...(evenness === undefined ? [] : [driftFinding(evenness)]),
  ];
}

/** Whether the reel may run: no fault, whatever the notes say. */
export const isReady = (findings: readonly CaptureFinding[]): boolean =>
  findings.every(({ verdict }) => verdict !== 'fault');
