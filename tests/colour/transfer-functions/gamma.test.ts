import { describe, expect, it } from 'vitest';
import { cinemaWhite } from '../../../shared/check-values/signal-levels.js';
import { xyzOfXy } from '../../../src/colour/chromaticity.js';
import { gamma26 } from '../../../src/colour/transfer-functions/gamma.js';

describe('cinema gamma', () => {
  it("has the published X'Y'Z' codes of white", () => {
    const codes = xyzOfXy(cinemaWhite.xy, cinemaWhite.luminanceCdM2).map((value) =>
      Math.round(4095 * gamma26.encode(value / 52.37)),
    );
    expect(codes).toEqual([...cinemaWhite.codes]);
  });
});
