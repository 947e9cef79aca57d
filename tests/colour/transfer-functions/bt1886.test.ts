import { describe, expect, it } from 'vitest';
import { bt1886Rows, bt709GreyShownCdM2 } from '../../../shared/check-values/signal-levels.js';
import { bt1886Display } from '../../../src/colour/transfer-functions/bt1886.js';
import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import { inverse, printed } from '../../tolerances.js';

describe('BT.1886 display', () => {
  it.each(bt1886Rows)('signal %s with white %s and black %s cd/m2', (signal, white, black, luminance) => {
    const display = bt1886Display(white, black);
    expect(Math.abs(display.decode(signal) - luminance)).toBeLessThan(printed(7));
    expect(Math.abs(display.encode(display.decode(signal)) - signal)).toBeLessThan(inverse);
  });

  it('shows an 18 % grey of the camera curve darker than filmed: the system gamma of television', () => {
    const shown = bt1886Display(100, 0).decode(transferFunctions.bt709.encode(0.18));
    expect(Math.abs(shown - bt709GreyShownCdM2)).toBeLessThan(printed(6));
  });

  it('goes on below its own black and comes back', () => {
    const display = bt1886Display(100, 0.1);
    for (const signal of [-0.5, -0.1, -0.01])
      expect(display.encode(display.decode(signal))).toBeCloseTo(signal, 12);
    expect(display.decode(-0.5)).toBeLessThan(0);
  });
});
