import { describe, expect, it } from 'vitest';
import { perStep, powerOfSteps } from '../../src/maths/exponential.js';

/** What its documentation promises, and two roundings. */
const relative = 2.1e-13 + 4e-16;

describe('powerOfSteps', () => {
  it('is an exponential, within its documented error, from e^-600 to e^600', () => {
    let worst = 0;
    for (let i = 0; i <= 400_000; i++) {
      const steps = -600 / perStep + ((1200 / perStep) * i) / 400_001;
      // The argument of Math.exp is rounded: up to 600 by 2^-53 of itself.
      const exact = Math.exp(perStep * steps);
      worst = Math.max(
        worst,
        Math.abs(powerOfSteps(steps) / exact - 1) - Math.abs(perStep * steps) * 2 ** -52,
      );
    }
    process.stdout.write(`powerOfSteps: largest relative error ${worst.toExponential(2)}\n`);
    expect(worst).toBeLessThan(relative);
  });

  it('is exact where it matters most', () => {
    expect(powerOfSteps(0)).toBe(1);
    expect(powerOfSteps(-2048)).toBe(0.5);
    expect(powerOfSteps(2048 * 40)).toBe(2 ** 40);
  });

  it('is no number for what is none', () => expect(powerOfSteps(NaN)).toBeNaN());

  it('does not step where its table goes on', () => {
    for (let k = -300; k <= 300; k++) {
      const border = k + 0.5;
      const [below, above] = [powerOfSteps(border - 1e-8), powerOfSteps(border + 1e-8)];
      expect(Math.abs(above / below - 1 - 2e-8 * perStep)).toBeLessThan(2 * relative);
    }
  });
});
