import { describe, expect, it } from 'vitest';
import { fastExp } from '../../src/maths/exponential.js';

/** What its documentation promises, and two roundings. */
const relative = 2e-13 + 4e-16;

describe('fastExp', () => {
  it('is e to the x, within its documented error, from -100 to 65', () => {
    let worst = 0;
    for (let i = 0; i <= 400_000; i++) {
      const x = -100 + (165 * i) / 400_001;
      worst = Math.max(worst, Math.abs(fastExp(x) / Math.exp(x) - 1));
    }
    process.stdout.write(`fastExp: largest relative error ${worst.toExponential(2)}\n`);
    expect(worst).toBeLessThan(relative);
  });

  it('is exact where it matters most', () => expect(fastExp(0)).toBe(1));

  it('is 0 far below, where the light of no film lies', () => {
    expect(fastExp(-100.1)).toBe(0);
    expect(fastExp(-1e9)).toBe(0);
    expect(fastExp(-Infinity)).toBe(0);
  });

  it('does not step where its table begins anew', () => {
    for (let k = -300; k <= 300; k++) {
      const border = ((k + 0.5) * Math.LN2) / 256;
      const [below, above] = [fastExp(border - 1e-12), fastExp(border + 1e-12)];
      expect(Math.abs(above / below - 1 - 2e-12)).toBeLessThan(2 * relative);
    }
  });
});
