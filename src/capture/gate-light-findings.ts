import type { Triple } from '../maths/matrix3.js';
import { type CaptureFinding, verdictOf } from './capture-finding.js';
import { balanceFinding } from './gate-balance-finding.js';
import type { Evenness, Exposure, GateLight } from './gate-light.js';

/** Common practice, no source: what is not seen, and what is seen but can be lived with. */
const limits = {
  spreadStops: { good: 0.15, note: 0.5 },
  /** No light through an open gate falls off by more. */
  mostSpreadStops: 3,
  /** In CIE 1976 u' v'. */
  colourDrift: { good: 0.004, note: 0.01 },
  /** Stops that an open gate may lie below the end of the scale. */
  roomStops: { good: 0.7, note: 2.5 },
} as const;

const channelNames = ['red', 'green', 'blue'] as const;

/** Stops to two decimals with their sign; never `-0.00`. */
const stopsText = (stops: number) =>
  `${stops >= 0.005 ? '+' : ''}${(Math.round(100 * stops) / 100 + 0).toFixed(2)}`;

const inTheMiddle = 'in the middle';

/** A place in the frame in words, from shares of its sides. */
function placeText({ across, down }: Evenness['hotSpot']): string {
  const third = (share: number, low: string, high: string) =>
    share < 0.4 ? [low] : share > 0.6 ? [high] : [];
  const words = [...third(down, 'top', 'bottom'), ...third(across, 'left', 'right')];
  const side = (share: number, of: string, low: string, high: string) => {
    const percent = Math.round(Math.abs(100 * (share - 0.5)));
    return percent === 0 ? [] : [`${percent} % of the ${of} ${share < 0.5 ? low : high}`];
  };
  const away = [...side(across, 'width', 'left', 'right'), ...side(down, 'height', 'up', 'down')];
  if (words.length === 0) return inTheMiddle;
  return `at the ${words.join(' ')} (from the middle ${away.join(' and ')})`;
}

function evennessFinding(evenness: Evenness | undefined): CaptureFinding {
  const name = 'evenness';
  if (evenness === undefined)
    return {
      name,
      verdict: 'fault',
      sentence: 'Parts are burnt out or dark: how even the light is cannot be read.',
      hint: 'Change the exposure and take the still again.',
    };
  const { corners, hotSpot, spreadStops } = evenness;
  const verdict = verdictOf(spreadStops, limits.spreadStops);
  const figures =
    `Stops against the brightest part: top left ${stopsText(corners.topLeft)}, top right ${stopsText(corners.topRight)}, ` +
    `bottom left ${stopsText(corners.bottomLeft)}, bottom right ${stopsText(corners.bottomRight)}; ` +
    `darkest part ${stopsText(-spreadStops)}.`;
  if (verdict === 'good') return { name, verdict, sentence: `The light is even. ${figures}` };
  const place = placeText(hotSpot);
  return {
    name,
    verdict,
    sentence: `The light is uneven by ${spreadStops.toFixed(2)} stops, brightest ${place}. ${figures}`,
    hint:
      spreadStops > limits.mostSpreadStops
        ? 'Is this the open gate, without film?'
        : place === inTheMiddle
          ? 'Move the diffuser further from the gate, or take a denser one.'
          : 'Centre the lamp first; what is left then, a diffuser further from the gate takes away.',
  };
}

function driftFinding({ colourDrift }: Evenness): CaptureFinding {
  const name = 'evenness of colour';
  const verdict = verdictOf(colourDrift, limits.colourDrift);
  const figure = `${colourDrift.toFixed(4)} in u'v'`;
  if (verdict === 'good')
    return { name, verdict, sentence: `The light has one colour across the frame (within ${figure}).` };
  return {
    name,
    verdict,
    sentence: `The colour of the light changes across the frame by up to ${figure}.`,
    hint: 'No look can put that right: mix the light better.',
  };
}

const percents = (values: Triple) =>
  values
    .map((value, c) => `${channelNames[c]} ${value.toFixed(value > 0 && value < 0.1 ? 3 : 1)} %`)
    .join(', ');

function exposureFinding(exposure: Exposure): CaptureFinding {
  const { stopsLeft, burntOutPercent, blockedPercent } = exposure;
  const name = 'exposure';
  const first = `${channelNames[exposure.firstToClip]} clips first`;
  if (Math.min(...blockedPercent) > 50 && Math.max(...burntOutPercent) === 0)
    return { name, verdict: 'fault', sentence: 'The gate is dark: there is no light to be measured.' };
  const burnt = `Burnt out: ${percents(burntOutPercent)}`;
  if (stopsLeft === undefined)
    return {
      name,
      verdict: 'fault',
      sentence: `${burnt}; nothing is left to tell how far.`,
      hint: 'Go down by a stop or more and take the still again.',
    };
  if (stopsLeft <= 0) {
    const down = `${Math.max(0.1, -stopsLeft).toFixed(1)} stops down`;
    return {
      name,
      verdict: 'fault',
      sentence: `${burnt}. The highest exposure with no clipped channel lies about ${down}; ${first}.`,
      hint: 'Go down by that much and take the still again.',
    };
  }
  const sentence = `The highest exposure with no clipped channel lies ${stopsLeft.toFixed(2)} stops up; ${first}.`;
  const verdict = verdictOf(stopsLeft, limits.roomStops);
  // So far below the last code no camera ends: there the codes are merely coarse.
  if (exposure.flatTop !== undefined && verdict !== 'fault') {
    const { channel, level, percent } = exposure.flatTop;
    // Cut off, not rounded: given back as the ceiling it must not lie above that level.
    const end = (Math.floor(1000 * level) / 10).toFixed(1);
    return {
      name,
      verdict: 'note',
      sentence: `${sentence} But ${percent.toFixed(0)} % of ${channelNames[channel]} has one and the same level, the highest there is: ${end} % of the scale.`,
      hint: `Many cameras end below the last code. If this one ends there (--ceiling ${end}), it is burnt out: take the still again a stop lower and compare.`,
    };
  }
  if (verdict === 'good') return { name, verdict, sentence };
  return {
    name,
    verdict,
    sentence,
    hint: 'The open gate is the brightest thing a reel can show: more exposure would give cleaner shadows.',
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
