import { describe, expect, it } from 'vitest';
import { outputRange } from '../../../src/lut/checks/output-range.js';
import { size } from '../../../src/lut/checks/size.js';
import { structure } from '../../../src/lut/checks/structure.js';
import { contextOf, curvesOf, identity, latticeOf, named } from './contexts.js';

describe('structure', () => {
  it('counts values that are no numbers', () => {
    const values = identity.values.slice();
    values.set([NaN, Infinity, -Infinity], 300);
    const finding = named(structure.ask(contextOf({ ...identity, values })), 'values-finite');
    expect(finding.figure).toBe(3);
    expect(finding.sentence).toBe('3 of 107\u00a0811 values are missing or are no numbers; none may be.');
  });

  it('notes a domain of its own by how far it goes beside 0 to 1', () => {
    const finding = named(structure.ask(contextOf({ ...identity, domainMax: [1, 1.5, 1] })), 'domain');
    expect(finding).toMatchObject({ figure: 0.5, pass: false, severity: 'note' });
  });
});

describe('size', () => {
  it.each([
    [17, true, true],
    [33, true, true],
    [65, true, true],
    [16, true, false],
    [129, true, false],
    [130, false, false],
  ])('%i points a side: loaded %s, usual %s', (points, loaded, usual) => {
    const findings = size.ask(contextOf(latticeOf((code) => code, points)));
    expect(named(findings, 'size').pass).toBe(loaded);
    expect(named(findings, 'usual-size').pass).toBe(usual);
  });

  it('says nothing of curves', () => {
    expect(size.ask(contextOf(curvesOf((code) => code)))).toEqual([]);
  });
});

describe('the output range', () => {
  it('is left by the share of colours that lie beyond it', () => {
    // Red above 0.8 goes beyond 1: 7 of 33 planes, 26/32 to 32/32.
    const context = contextOf(curvesOf((code, channel) => (channel === 0 ? 1.25 * code : code)));
    const [finding] = outputRange.ask(context);
    expect(finding.figure).toBeCloseTo(100 * (7 / 33), 6);
    expect(finding).toMatchObject({ pass: false, severity: 'fault' });
    expect(finding.sentence).toMatch(
      /^21\.2 % of the colours come out beyond 0 to 1, the farthest by 0\.25; limit 1 %\.$/,
    );
  });

  it('is judged in legal range against its own ends', () => {
    const brighter = contextOf(
      curvesOf((code) => 1.1 * code),
      'bt1886',
      'legal',
    );
    const [finding] = outputRange.ask(brighter);
    expect(finding.pass).toBe(false);
    expect(finding.sentence).toContain('legal range (0.0626 to 0.919)');
  });

  it('may be left by a few corners, and by less than a code anywhere', () => {
    const corner = latticeOf((code) => code);
    corner.values[3 * 32] = 1.5;
    expect(outputRange.ask(contextOf(corner))[0].pass).toBe(true);
    expect(outputRange.ask(contextOf(latticeOf((code) => code * 1.0009)))[0].figure).toBe(0);
  });
});
