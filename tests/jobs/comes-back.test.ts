import { describe, expect, it } from 'vitest';
import { isGood, onWayBack } from '../../src/jobs/check-lut.js';
import { comesBackFinding, comesBackText, mostLost } from '../../src/jobs/comes-back.js';
import type { Finding } from '../../src/lut/checks/index.js';

const fault = (name: string): Finding => ({
  ...{ name, sentence: '', figure: 2, limit: 1, unit: '' },
  pass: false,
  severity: 'fault',
});
const file = (said: string) => ({ comments: [['comes back', said]] as const });

describe('what a way back says of itself', () => {
  it.each([0, 0.0123, mostLost, mostLost + 0.0001, 0.4, 1])('is read as it was written: %d lost', (lost) => {
    const finding = comesBackFinding(file(comesBackText(lost)))!;
    expect(finding.figure).toBeCloseTo(1 - lost, 6);
    expect([finding.pass, finding.severity]).toEqual([lost <= mostLost, 'fault']);
  });

  it.each(['', 'all of it', '-3 % of all colours within 4 codes', '1e9 % of all colours within 4 codes'])(
    'is passed over where it is no share: %j',
    (said) => expect(comesBackFinding(file(said))).toBeUndefined(),
  );
});

describe('the findings on a way back', () => {
  it('are good where enough comes back, whatever greys do that the look never gives', () => {
    const found = ['neutral-rises', 'fold-overs', 'output-range', 'highlights-8-bit'].map(fault);
    expect(isGood(found)).toBe(false);
    expect(isGood(onWayBack(found, file(comesBackText(0.01))))).toBe(true);
    expect(isGood(onWayBack(found, file(comesBackText(0.2))))).toBe(false);
  });

  it.each(['values-finite', 'domain', 'size', 'lattice-mean'])('keep a fault of any table: %s', (name) => {
    expect(isGood(onWayBack([fault(name)], file(comesBackText(0))))).toBe(false);
  });
});
