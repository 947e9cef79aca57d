import { describe, expect, it } from 'vitest';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import type { MarkReading } from '../../src/measure/marks.js';
import { openGate } from '../../src/measure/open-gate.js';

const linear = transferFunctions.linear;
const reading = (light: MarkReading['light']): MarkReading => ({
  rectangle: { still: 1, x: 0, y: 0, width: 4, height: 4 },
  light,
  burntOut: light === undefined ? 1 : 0,
  blocked: 0,
});
const still = (level: number, burntOut = 0) => ({
  light: new Float64Array(300).fill(level),
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

  it('is the end of the scale when the mark is burnt out', () => {
    expect(openGate([still(0.3)], [reading(undefined)], linear)).toEqual({
      level: 1,
      from: 'burnt-out clear mark',
    });
  });

  it('else lies a little above the brightest still, and at the end where a still is burnt out', () => {
    const { level, from } = openGate([still(0.3), still(0.5)], [], linear);
    expect(from).toBe('brightest parts');
    expect(level).toBeGreaterThan(0.5);
    expect(level).toBeLessThan(0.6);
    expect(openGate([still(0.3), still(0.5, 0.1)], [], linear).level).toBe(1);
  });

  it('never passes the end of the scale', () => {
    expect(openGate([still(0.99)], [], linear).level).toBe(1);
  });
});
