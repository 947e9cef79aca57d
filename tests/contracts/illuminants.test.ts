import { describe, expect, it } from 'vitest';
import { illuminantChecks } from '../../shared/check-values/lights.js';
import { xyOfXyz } from '../../src/colour/chromaticity.js';
import { illuminants } from '../../src/colour/illuminants/index.js';
import { xyzOf } from '../../src/colour/observer.js';
import { grid } from '../../src/colour/spectrum.js';
import { whiteChromaticity, whiteXyz } from '../tolerances.js';

describe.each(Object.entries(illuminants))('%s', (name, { title, source, spectrum }) => {
  const check = illuminantChecks[name];

  it('has a title, a source and published values', () => {
    expect(title).not.toBe('');
    expect(source).not.toBe('');
    expect(check).toBeDefined();
  });

  it('is positive on the grid and 100 at 560 nm', () => {
    expect(spectrum).toHaveLength(grid.count);
    expect(Math.min(...spectrum)).toBeGreaterThan(0);
    expect(spectrum[(560 - grid.startNm) / grid.stepNm]).toBeCloseTo(100, 9);
  });

  it('has the published chromaticity', () => {
    const [x, y] = xyOfXyz(xyzOf(spectrum));
    expect(Math.abs(x - check.xy[0])).toBeLessThan(whiteChromaticity);
    expect(Math.abs(y - check.xy[1])).toBeLessThan(whiteChromaticity);
  });

  it('has the tristimulus values that the 5 nm tables give', () => {
    const [x, y, z] = xyzOf(spectrum);
    [x, y, z].forEach((value, i) =>
      expect(Math.abs((100 * value) / y - check.xyz[i])).toBeLessThan(whiteXyz),
    );
  });
});

it('no published values lie about for lights that are not there', () => {
  expect(Object.keys(illuminantChecks).sort()).toEqual(Object.keys(illuminants).sort());
});
