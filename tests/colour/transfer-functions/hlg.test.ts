import { describe, expect, it } from 'vitest';
import { hdrLevels, hlgDisplayRows } from '../../../shared/check-values/signal-levels.js';
import { hlg } from '../../../src/colour/transfer-functions/hlg.js';
import { pq, pqPeakCdM2 } from '../../../src/colour/transfer-functions/pq.js';
import { printed } from '../../tolerances.js';

/** Luminance of a grey on an HLG display of 1000 cd/m2, whose system gamma is 1.2 (ITU-R BT.2100-2). */
const onDisplay = (sceneLight: number) => 1000 * sceneLight ** 1.2;

describe('HLG', () => {
  it.each(hlgDisplayRows)('signal %s is %s cd/m2 on a display of 1000', (signal, luminance) => {
    expect(Math.abs(onDisplay(hlg.decode(signal)) - luminance)).toBeLessThan(1.1 * printed(4));
  });
});

describe('levels of HDR production', () => {
  it.each(hdrLevels)(
    'reflectance %s: HLG %s %, PQ %s %, %s cd/m2',
    (reflectance, hlgPercent, pqPercent, luminance) => {
      const light = reflectance * hlg.whiteLight;
      expect(Math.abs(100 * hlg.encode(light) - hlgPercent)).toBeLessThan(printed(0));
      expect(Math.abs(onDisplay(light) - luminance)).toBeLessThan(printed(0));
      expect(Math.abs(100 * pq.encode(onDisplay(light) / pqPeakCdM2) - pqPercent)).toBeLessThan(printed(0));
    },
  );

  it('diffuse white is one level in both', () => {
    expect(Math.abs(onDisplay(hlg.whiteLight) - pq.whiteLight * pqPeakCdM2)).toBeLessThan(printed(0));
  });
});
