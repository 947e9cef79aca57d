import { describe, expect, it } from 'vitest';
import { legalCodes, legalShares, legalSignals } from '../../shared/check-values/signal-range.js';
import { fromFull, rangeScale, toFull } from '../../src/colour/signal-range.js';
import { legalShareOfOtherDepths, printed } from '../tolerances.js';

describe('legal range', () => {
  it.each(legalShares)('signal %s is the share %s of full code', (signal, share) => {
    expect(Math.abs(fromFull(signal) - share)).toBeLessThan(printed(8));
    expect(toFull(fromFull(signal))).toBeCloseTo(signal, 15);
  });

  it.each(legalSignals)('10-bit code %s is signal %s', (code, signal) => {
    expect(Math.abs(toFull(code / 1023) - signal)).toBeLessThan(printed(8));
    expect(fromFull(toFull(code / 1023)) * 1023).toBeCloseTo(code, 10);
  });

  it.each(legalCodes)('of $bits bits is near that of 10', ({ bits, black, white }) => {
    const top = 2 ** bits - 1;
    expect(Math.abs(rangeScale.legal.black - black / top)).toBeLessThan(legalShareOfOtherDepths);
    expect(Math.abs(rangeScale.legal.white - white / top)).toBeLessThan(legalShareOfOtherDepths);
  });

  it('of 10 bits is exact', () => {
    expect(fromFull(0, 'legal')).toBe(64 / 1023);
    expect(fromFull(1, 'legal') * 1023).toBeCloseTo(940, 12);
  });
});

describe('full range', () => {
  it.each([-0.1, 0, 0.5, 1, 1.2])('leaves %s as it is', (signal) => {
    expect(toFull(signal, 'full')).toBe(signal);
    expect(fromFull(signal, 'full')).toBe(signal);
  });
});
