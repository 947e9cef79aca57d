import { describe, expect, it } from 'vitest';
import { densityPairs, statusA, statusAChecks } from '../../shared/check-values/densitometry.js';
import { aboveFloor, densityOf, densitySlope, transmittanceOf } from '../../src/film/density.js';
import { printed } from '../tolerances.js';
import { statusDensity } from './status-density.js';

/** The smooth floor lies at 1e-6: at transmittance T it adds (1e-6 / T)^2 of T, at 0.001 4e-7 of a density. */
const byFloor = 5e-7;

describe('density', () => {
  it.each(densityPairs)('of transmittance %s is %s (ISO 5-1)', (transmittance, density) => {
    expect(Math.abs(densityOf(transmittance) - density)).toBeLessThan(printed(5) + byFloor);
    expect(Math.abs(transmittanceOf(density) - transmittance)).toBeLessThan(printed(5));
  });

  it('is undone by transmittance down to density 4', () => {
    for (let density = -0.5; density <= 4; density += 0.01)
      expect(Math.abs(densityOf(transmittanceOf(density)) - density)).toBeLessThan(1e-4);
  });

  it('of no light, and of less than none, is finite and rises on', () => {
    const fading = [1e-3, 1e-5, 1e-6, 0, -1e-6, -1e-3, -1];
    const densities = fading.map(densityOf);
    expect(densities.every(Number.isFinite)).toBe(true);
    expect(densityOf(0)).toBeCloseTo(6, 9);
    densities.forEach((density, i) => expect(density).toBeGreaterThan(densities[i - 1] ?? 0));
  });

  it('hands NaN on', () => expect(densityOf(NaN)).toBeNaN());
});

describe('the floor of light', () => {
  it('is positive, touches nothing well above, and densities have the slope they say', () => {
    for (const x of [0, 1e-7, 1e-6, 1e-5, 1e-3, 0.18, 1, 50]) {
      expect(aboveFloor(x)).toBeGreaterThan(0);
      expect(aboveFloor(-x)).toBeGreaterThan(0);
      const h = Math.max(1e-9, 1e-4 * x);
      const slope = (densityOf(x + h) - densityOf(x - h)) / (2 * h);
      expect(Math.abs(densitySlope(x) / slope - 1)).toBeLessThan(1e-4);
      // y(x) y(-x) is the floor squared, so the density of -x is 12 less that of x.
      expect(densitySlope(-x)).toBe(densitySlope(x));
    }
    expect(Math.abs(aboveFloor(0.18) - 0.18)).toBeLessThan(1e-11);
  });
});

describe('status A densities, as the dye sets are judged by', () => {
  it.each(statusAChecks)('of $film', ({ at, red, green, blue }) => {
    // Derived figures, printed to five decimals (ISO 5-3 products).
    expect(Math.abs(statusDensity(statusA.red, at) - red)).toBeLessThan(printed(5));
    expect(Math.abs(statusDensity(statusA.green, at) - green)).toBeLessThan(printed(5));
    expect(Math.abs(statusDensity(statusA.blue, at) - blue)).toBeLessThan(printed(5));
  });
});
