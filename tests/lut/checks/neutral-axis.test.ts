import { describe, expect, it } from 'vitest';
import { rangeScale } from '../../../src/colour/signal-range.js';
import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import {
  codeOfLight,
  evenCodes,
  greys,
  pictureRange,
  throughDevice,
} from '../../../src/lut/checks/neutral-axis.js';
import { contextOf, identity, latticeOf } from './contexts.js';

/** Y = 1 is looked for a millionth early. */
const nearWhite = 5;

describe('the range of codes that hold a picture', () => {
  it('is all of it for sRGB', () => {
    const { black, white } = pictureRange(contextOf(identity));
    expect(black).toBeCloseTo(0, 12);
    expect(white).toBeCloseTo(1, nearWhite);
  });

  it('leaves out foot- and headroom of legal range', () => {
    const { black, white } = pictureRange(contextOf(identity, 'bt1886', 'legal'));
    expect(black).toBeCloseTo(rangeScale.legal.black, 9);
    expect(white).toBeCloseTo(rangeScale.legal.white, nearWhite);
  });

  it('leaves out what a log curve keeps above white and below black', () => {
    const { encode } = transferFunctions.acescct;
    const { black, white } = pictureRange(contextOf(identity, 'acescct'));
    expect(black).toBeCloseTo(encode(0), 9);
    expect(white).toBeCloseTo(encode(1), nearWhite);
  });
});

describe('the code of a light', () => {
  it('is what the encoding gives', () => {
    expect(codeOfLight(contextOf(identity), 0.18)).toBeCloseTo(transferFunctions.srgb.encode(0.18), 6);
  });

  it('is an end where the light lies beyond', () => {
    expect(codeOfLight(contextOf(identity), 7)).toBe(1);
    expect(codeOfLight(contextOf(identity), -7)).toBe(0);
  });
});

describe('greys', () => {
  it('are evenly spread, both ends exact', () => {
    const [first, middle, last] = evenCodes(3, 0.1, 0.7);
    expect([first, last]).toEqual([0.1, 0.7]);
    expect(middle).toBeCloseTo(0.4, 12);
    expect([...greys([0.1, 0.7])]).toEqual([0.1, 0.1, 0.1, 0.7, 0.7, 0.7]);
  });

  it('come out of a device clipped', () => {
    const context = contextOf(latticeOf((code) => 3 * code - 1));
    expect([...throughDevice(context, greys([0, 0.5, 1]))]).toEqual([0, 0, 0, 0.5, 0.5, 0.5, 1, 1, 1]);
  });
});
