import { describe, expect, it } from 'vitest';
import { acescctLine } from '../../../shared/check-values/signal-levels.js';
import { acescct } from '../../../src/colour/transfer-functions/acescct.js';

describe('ACEScct', () => {
  it('has the published line below its break', () => {
    expect(acescct.encode(0)).toBeCloseTo(acescctLine.offset, 14);
    expect((acescct.encode(0) - acescct.encode(-1)) / acescctLine.slope).toBeCloseTo(1, 14);
  });
});
