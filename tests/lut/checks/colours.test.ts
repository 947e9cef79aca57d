import { describe, expect, it } from 'vitest';
import { ciede2000, labOfXyz } from '../../../src/colour/difference.js';
import { illuminants } from '../../../src/colour/illuminants/index.js';
import { xyzOf } from '../../../src/colour/observer.js';
import { latticeError } from '../../../src/lut/checks/lattice-error.js';
import { midGreyContrast } from '../../../src/lut/checks/mid-grey-contrast.js';
import { warmth } from '../../../src/lut/checks/warmth.js';
import type { Triple } from '../../../src/maths/matrix3.js';
import { contextOf, curvesOf, identity, latticeOf, named } from './contexts.js';

/** The 5 nm grid of the spectra against the published temperature. */
const kelvinTolerance = 4;

describe('warmth', () => {
  /** A LUT that turns everything into one light, its code values being X, Y and Z. */
  const lightOf = (xyz: Triple) => {
    const most = Math.max(...xyz);
    return {
      ...contextOf(latticeOf((_, channel) => xyz[channel] / most)),
      decodeOutput: () => undefined,
    };
  };

  // CIE 15:2004, table T.3: correlated colour temperatures of A, D50 and D65.
  it.each([
    ['a', 2856],
    ['d50', 5003],
    ['d65', 6504],
  ] as const)('of the illuminant %s is %i K', (name, kelvin) => {
    const findings = warmth.ask(lightOf(xyzOf(illuminants[name].spectrum)));
    expect(Math.abs(named(findings, 'mid-grey-temperature').figure - kelvin)).toBeLessThan(kelvinTolerance);
    expect(Math.abs(named(findings, 'white-temperature').figure - kelvin)).toBeLessThan(kelvinTolerance);
    expect(named(findings, 'white-cast').figure).toBeLessThan(0.004);
  });

  it('is never a fault', () => {
    const findings = warmth.ask(contextOf(latticeOf((code, channel) => [1, 0.3, 0.02][channel] * code)));
    expect(findings.every((finding) => finding.severity === 'note')).toBe(true);
    expect(named(findings, 'white-temperature').pass).toBe(false);
  });

  it('tells green from pink', () => {
    const cast = (green: number) =>
      contextOf(latticeOf((code, channel) => (channel === 1 ? green : 0.8) * code));
    expect(named(warmth.ask(cast(1)), 'white-cast').sentence).toContain('towards green');
    expect(named(warmth.ask(cast(0.6)), 'white-cast').sentence).toContain('towards pink');
    for (const finding of ['mid-grey-cast', 'white-cast'])
      expect(named(warmth.ask(contextOf(identity)), finding).sentence).toMatch(/has no cast, 0\.003\d+ Duv/);
  });

  it('of a black that has no colour does not pass, nor is it a fault', () => {
    const nothing = contextOf(latticeOf(() => 0));
    const findings = warmth.ask(nothing);
    for (const { sentence } of [...findings, ...midGreyContrast.ask(nothing)])
      expect(sentence).toMatch(/^A[^;]* (has no colour|there is no light); [^;]*$/);
    expect(findings.every((finding) => finding.severity === 'note')).toBe(true);
    expect(named(findings, 'white-temperature').pass).toBe(false);
  });
});

describe('the distance from the exact look', () => {
  const samples = Float64Array.from({ length: 300 }, (_, i) => Math.floor(i / 3) / 99);

  it('is that of the two colours', () => {
    const colour: Triple = [0.3, 0.4, 0.2];
    const look: Triple = [0.31, 0.4, 0.2];
    const context = {
      ...contextOf(latticeOf((_, channel) => colour[channel])),
      decodeOutput: () => undefined,
      samples,
      exact: (run: Float64Array) => void run.forEach((_, i) => (run[i] = look[i % 3])),
    };
    const expected = ciede2000(labOfXyz(look, [1, 1, 1]), labOfXyz(colour, [1, 1, 1]));
    const findings = latticeError.ask(context);
    for (const name of ['lattice-mean', 'lattice-99-percent', 'lattice-largest'])
      expect(named(findings, name).figure).toBeCloseTo(expected, 9);
  });

  it('falls by the square of the distance between points', () => {
    const curve = (code: number) => code ** 1.5;
    const exact = (run: Float64Array) => void run.forEach((code, i) => (run[i] = curve(code)));
    const mean = (points: number) =>
      named(latticeError.ask({ ...contextOf(latticeOf(curve, points)), samples, exact }), 'lattice-mean')
        .figure;
    expect(mean(17) / mean(33)).toBeGreaterThan(3);
    expect(mean(33)).toBeLessThan(0.1);
  });

  it('does not count what the device clips alike', () => {
    const context = {
      ...contextOf(curvesOf((code) => code + 2)),
      samples,
      exact: (run: Float64Array) => void run.fill(1.5),
    };
    expect(named(latticeError.ask(context), 'lattice-largest').figure).toBe(0);
  });

  it('is nothing for an identity', () => {
    const findings = latticeError.ask({ ...contextOf(identity), samples, exact: () => undefined });
    expect(named(findings, 'lattice-largest').figure).toBeLessThan(1e-9);
  });
});
