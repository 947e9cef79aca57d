import { describe, expect, it } from 'vitest';
import { printingDensityRows } from '../../../shared/check-values/signal-levels.js';
import { printingDensityLog } from '../../../src/colour/transfer-functions/printing-density-log.js';

describe('printing density', () => {
  it.each(printingDensityRows)('code %s is density %s above base', (code, density) => {
    // Light of a negative scanned: log10 exposure is density over gamma 0.6, and light 1 stands at code 685.
    const black = 10 ** ((-0.002 * (685 - 95)) / 0.6);
    const exposure = printingDensityLog.decode(code / 1023) * (1 - black) + black;
    expect(0.6 * Math.log10(exposure) + 1.18).toBeCloseTo(density, 12);
  });
});
