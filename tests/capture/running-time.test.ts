import { describe, expect, it } from 'vitest';
import { framesPerMetreRows, pitchMm, runningTimeRows } from '../../shared/check-values/capture.js';
import type { GaugeName } from '../../src/capture/gauge.js';
import { gauges } from '../../src/capture/gauge.js';
import {
  clock,
  feetOfMetres,
  framesOnFeet,
  runningTimeS,
  speedChange,
} from '../../src/capture/running-time.js';

describe('running time', () => {
  it.each(runningTimeRows)('%s, %i feet: %i frames, at %d fps %s', (gauge, feet, frames, fps, time) => {
    expect(framesOnFeet(gauges[gauge], feet)).toBe(frames);
    expect(clock(runningTimeS(frames, fps))).toBe(time);
  });

  it.each(framesPerMetreRows)('%s: %d frames a metre', (gauge, perMetre) => {
    expect(gauges[gauge].framesPerFoot * feetOfMetres(1)).toBeCloseTo(perMetre, 2);
  });

  it('frames a foot follow from the perforation pitch', () => {
    for (const name of Object.keys(gauges) as GaugeName[])
      // 72 a foot is the trade's round figure for 71.99
      expect(Math.abs(304.8 / pitchMm[name] - gauges[name].framesPerFoot)).toBeLessThan(0.02);
  });

  it('hours show from one hour on', () => {
    expect(clock(3725)).toBe('1:02:05');
    expect(clock(3599.6)).toBe('1:00:00');
    expect(clock(0)).toBe('0:00');
  });

  it('18 shown at 16 2/3: 7.41 % slower, put right at 108 %', () => {
    const { factor, correction } = speedChange(18, 50 / 3);
    expect(1 - factor).toBeCloseTo(0.074074, 6);
    expect(correction).toBeCloseTo(1.08, 12);
  });

  it('24 at 25: 4.17 % faster', () => {
    expect(speedChange(24, 25).factor - 1).toBeCloseTo(0.041667, 6);
  });
});
