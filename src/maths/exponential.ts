/** An octave, a factor of two, is divided into so many steps: powers at the steps come from a table. */
const octaveSteps = 2048;
const lastStep = octaveSteps - 1;

/** Natural logarithm of a step. */
const stepLog = Math.LN2 / octaveSteps;

/** 2^(0 / 2048), 2^(1 / 2048), ... */
const powers = Float64Array.from({ length: octaveSteps }, (_, i) => 2 ** (i / octaveSteps));

/** Whole octaves, 2^-1000 to 2^1000. */
const mostOctaves = 1000;
const octavePowers = Float64Array.from({ length: 2 * mostOctaves + 1 }, (_, i) => 2 ** (i - mostOctaves));

/** Added to a number below 2^31 either way and taken off again, it leaves the nearest whole one. */
const rounder = 1.5 * 2 ** 52;

/**
 * Between steps, at most half a step x off: e^x = 1 + x + x^2 / 2 + x^3 / 6, whose last term is all but 2e-13 of its
 * share on a line (Chebyshev: x^3 is 3/4 h^2 x up to h^3 / 4, for x up to h).
 */
const slope = stepLog * (1 + (stepLog / 2) ** 2 / 8);
const curve = (stepLog * stepLog) / 2;

/**
 * 2^(steps / 2048), that is e^(perStep * steps), to a relative error of 2.1e-13: in a loop some three times as fast as
 * Math.exp.
 * @param steps -2e6 to 2e6
 */
export function powerOfSteps(steps: number): number {
  const whole = steps + rounder - rounder;
  const rest = steps - whole;
  const k = whole | 0;
  return powers[k & lastStep] * octavePowers[(k >> 11) + mostOctaves] * (1 + rest * (slope + rest * curve));
}

// What others need to reckon alike. Not the names used above: what a module exports is looked up at every use.
export const perStep = stepLog;
export const stepPowers = powers;
export const restTerms = { slope, curve } as const;
