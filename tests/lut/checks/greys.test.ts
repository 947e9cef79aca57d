import { describe, expect, it } from 'vitest';
import { banding } from '../../../src/lut/checks/banding.js';
import { endPoints } from '../../../src/lut/checks/end-points.js';
import { midGreyContrast } from '../../../src/lut/checks/mid-grey-contrast.js';
import { neutralRises } from '../../../src/lut/checks/neutral-rises.js';
import { contextOf, curvesOf, identity, latticeOf, named } from './contexts.js';

describe('greys that fall', () => {
  it('are measured from the height they had reached', () => {
    // Up to 0.5, then down by 0.01 and up again.
    const curve = (code: number, channel: number) =>
      channel === 1 && code > 0.5 ? Math.max(code - 0.5, 0.49 - 0.02 * (code - 0.5)) : code;
    const finding = named(neutralRises.ask(contextOf(curvesOf(curve))), 'neutral-rises');
    expect(finding.figure).toBeGreaterThan(0.01 * 1023);
    expect(finding.figure).toBeLessThan(0.0201 * 1023);
    expect(finding.sentence).toMatch(/\(green, at input 0\.\d+\); limit 0\.5\.$/);
  });

  it('by less than half a code pass', () => {
    const wave = (height: number) =>
      contextOf(curvesOf((code) => 0.5 * code + height * Math.cos(600 * code)));
    expect(named(neutralRises.ask(wave(0.1 / 1023)), 'neutral-rises').pass).toBe(true);
    expect(named(neutralRises.ask(wave(2 / 1023)), 'neutral-rises').pass).toBe(false);
  });
});

describe('steps', () => {
  it.each([8, 10])('are one code at %i bits when nothing is changed', (bits) => {
    expect(named(banding.ask(contextOf(identity)), `steps-${bits}-bit`).figure).toBe(1);
  });

  it('are the slope of the curve, in codes', () => {
    const context = contextOf(curvesOf((code) => Math.min(1, Math.max(0, 3 * (code - 0.5) + 0.5))));
    for (const bits of [8, 10]) {
      const finding = named(banding.ask(context), `steps-${bits}-bit`);
      expect(finding.figure).toBe(3);
      expect(finding.sentence).toContain('slope 3');
    }
  });

  it('that the dark hides are left out', () => {
    // Tenfold up to the first code, which is less than a thousandth of white.
    const steep = (code: number) => (code < 0.001 ? 10 * code : 0.01 + (0.99 * (code - 0.001)) / 0.999);
    expect(named(banding.ask(contextOf(curvesOf(steep))), 'steps-10-bit').figure).toBeLessThanOrEqual(2);
  });

  it('of a tear are found where it lies', () => {
    const context = contextOf(curvesOf((code) => (code < 0.6 ? 0.9 * code : 0.1 + 0.9 * code)));
    const finding = named(banding.ask(context), 'steps-10-bit');
    expect(finding.figure).toBeGreaterThan(20);
    expect(finding).toMatchObject({ pass: false, severity: 'fault' });
    expect(finding.sentence).toMatch(/at code 61[45]/);
  });
});

describe('end points', () => {
  it('are the light of white and black', () => {
    const findings = endPoints.ask(
      contextOf(
        latticeOf((code) => 0.1 + 0.8 * code),
        'gamma-2.2',
      ),
    );
    expect(named(findings, 'white-point').figure).toBeCloseTo(100 * 0.9 ** 2.2, 3);
    expect(named(findings, 'black-point').figure).toBeCloseTo(100 * 0.1 ** 2.2, 9);
  });

  it('are those of legal range', () => {
    const findings = endPoints.ask(contextOf(identity, 'bt1886', 'legal'));
    expect(named(findings, 'white-point').figure).toBeCloseTo(100, 3);
    expect(named(findings, 'black-point').figure).toBeCloseTo(0, 9);
  });
});

describe('contrast about mid-grey', () => {
  it.each([0.8, 1, 1.5, 2])('of a power of light is its exponent: %f', (exponent) => {
    const context = contextOf(
      curvesOf((code) => code ** exponent),
      'gamma-2.4',
    );
    expect(midGreyContrast.ask(context)[0].figure).toBeCloseTo(exponent, 3);
  });

  it('does not change with exposure', () => {
    const context = contextOf(
      curvesOf((code) => 0.5 * code),
      'gamma-2.4',
    );
    expect(midGreyContrast.ask(context)[0].figure).toBeCloseTo(1, 3);
  });
});
