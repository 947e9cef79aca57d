import { type CaptureFinding, verdictOf, worse } from './capture-finding.js';
import type { LightBalance } from './gate-light.js';

/**
 * Five mired are about what is just seen between two lights; up to `note` a white balance takes the rest away without harm
 * (common practice, no source).
 */
export const balanceLimits = { mired: { good: 5, note: 25 }, duv: { good: 0.002, note: 0.006 } } as const;

/** Beyond this distance from Planck's locus a colour temperature says nothing (CIE 15:2004, section 9.5). */
const farFromLocus = 0.05;

const name = 'white balance';
const kelvinText = (kelvin: number) => `${Math.round(kelvin)} K`;
const tintOf = ({ duvShift }: LightBalance) => (duvShift > 0 ? 'green' : 'pink (magenta)');

/** Shifts that can be seen: how far, and which way to turn what. */
function shifts(balance: LightBalance): { readonly off: string; readonly turn: string }[] {
  const { miredShift, duvShift } = balance;
  const mired = `${Math.abs(miredShift).toFixed(0)} mired`;
  const warmth = {
    off: `${mired} too ${miredShift > 0 ? 'warm (red)' : 'cool (blue)'}`,
    turn: `turn the lamp ${miredShift > 0 ? 'cooler (bluer, more kelvin)' : 'warmer (redder, fewer kelvin)'} by ${mired}`,
  };
  const tint = {
    off: `${Math.abs(duvShift).toFixed(4)} Duv too ${tintOf(balance)}`,
    turn: `filter it ${duvShift > 0 ? 'pinker (minus green)' : 'greener (plus green)'}`,
  };
  return [
    ...(Math.abs(miredShift) > balanceLimits.mired.good ? [warmth] : []),
    ...(Math.abs(duvShift) > balanceLimits.duv.good ? [tint] : []),
  ];
}

/** Which way to turn the lamp so that it meets the camera's white, a clause; undefined where they agree. */
export function turnText(balance: LightBalance): string | undefined {
  const turns = shifts(balance).map(({ turn }) => turn);
  return turns.length === 0 ? undefined : turns.join(' and ');
}

/** The light's colour against the camera's white balance, and how to bring them together. */
export function balanceFinding(balance: LightBalance | undefined): CaptureFinding {
  if (balance === undefined)
    return {
      name,
      verdict: 'fault',
      sentence: 'The middle is burnt out or dark: its colour cannot be read.',
      hint: 'Change the exposure and take the still again.',
    };
  const { miredShift, duvShift, kelvin, whiteKelvin, whiteTold } = balance;
  if (Math.abs(duvShift) > farFromLocus)
    return {
      name,
      verdict: 'fault',
      sentence: `The light is far too ${tintOf(balance)}, too strongly coloured to have a colour temperature.`,
      hint: 'Is this the open gate, without film or filter?',
    };
  const reads = whiteTold
    ? `With the camera's white at ${kelvinText(whiteKelvin)} the light reads as ${kelvinText(kelvin)}`
    : `To a camera whose white is ${kelvinText(whiteKelvin)} (--white-balance says what it is) the light reads as ${kelvinText(kelvin)}`;
  const found = shifts(balance);
  if (found.length === 0)
    return { name, verdict: 'good', sentence: `${reads}: they agree as nearly as anyone can see.` };
  return {
    name,
    verdict: worse(
      verdictOf(Math.abs(miredShift), balanceLimits.mired),
      verdictOf(Math.abs(duvShift), balanceLimits.duv),
    ),
    sentence: `${reads}: ${found.map(({ off }) => off).join(' and ')}.`,
    hint:
      `Set the camera's white balance on this open gate. If it cannot reach, or is to stay at ` +
      `${kelvinText(whiteKelvin)}: ${turnText(balance)}.`,
  };
}
