import { describe, expect, it } from 'vitest';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import type { Triple } from '../../src/maths/matrix3.js';
import type { MarkReading } from '../../src/measure/marks.js';
import { openGate } from '../../src/measure/open-gate.js';

const linear = transferFunctions.linear;
const reading = (light: MarkReading['light'], atLeast: Triple = [1, 1, 1]): MarkReading => ({
  rectangle: { still: 1, x: 0, y: 0, width: 4, height: 4 },
  light,
  atLeast: light ?? atLeast,
  burntOut: light === undefined ? 1 : 0,
  blocked: 0,
});
const still = (level: number, burntOut = 0) => ({
  light: new Float64Array(300).fill(level),
  atLeast: [level, level, level] as const,
  burntOut,
  blocked: 0,
});

describe('the open gate', () => {
  it('is what the user says, and a clear mark then tells its colour', () => {
    expect(openGate([still(0.3)], [], linear, 0.8)).toEqual({ level: 0.8, from: 'given' });
    const { whiteBalance } = openGate([still(0.3)], [reading([0.8, 0.8, 0.08])], linear, 0.8);
    [0, 0, 1].forEach((d, k) => expect(whiteBalance![k]).toBeCloseTo(d, 9));
  });

  it('is the mean of clear marks', () => {
    const found = openGate([still(0.3)], [reading([0.8, 0.8, 0.8]), reading([0.6, 0.6, 0.6])], linear);
    expect(found.level).toBeCloseTo(0.7, 12);
    expect(found.from).toBe('clear mark');
  });

  it('is at least what a burnt-out mark shows, with the colour that is left to see', () => {
    const { level, from, whiteBalance } = openGate([still(0.3)], [reading(undefined, [1, 0.8, 0.9])], linear);
    expect(level).toBeCloseTo(0.9, 12);
    expect(from).toBe('burnt-out clear mark');
    expect(whiteBalance![1] - whiteBalance![0]).toBeCloseTo(-Math.log10(0.8), 9);
  });

  it('else is that of a well-set exposure, if the brightest part can lie just below it', () => {
    const { level, from } = openGate([still(0.3), still(0.7)], [], linear);
    expect(from).toBe('brightest parts');
    expect(level).toBeCloseTo(0.85, 9);
  });

  it('lies a little above the brightest part of dark stills, and at the end where a still is burnt out', () => {
    const { level } = openGate([still(0.2), still(0.3)], [], linear);
    expect(level).toBeGreaterThan(0.3);
    expect(level).toBeLessThan(0.5);
    expect(openGate([still(0.3), still(0.5, 0.1)], [], linear).level).toBe(1);
  });

  it('never passes the end of the scale', () => {
    expect(openGate([still(0.99)], [], linear).level).toBe(1);
  });
});
