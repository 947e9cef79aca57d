import { describe, expect, it } from 'vitest';
import { lookOf, through } from './looks.js';

describe('the order of the light path', () => {
  const linear = { camera: { encoding: 'linear' }, delivery: { encoding: 'linear' } };
  const black = (fields: object) => through(lookOf({ ...linear, ...fields }), [0, 0, 0])[1];

  it('prints before it projects: flare lies over the print, and contrast does not touch it', () => {
    const flare = 0.01;
    expect(black({ projector: { flare }, print: { contrast: 2, exposureStops: -3 } })).toBeCloseTo(
      flare / (1 + flare),
      12,
    );
  });

  it('looks at the screen after the flare: the surround lifts it', () => {
    const flat = black({ projector: { flare: 0.01 } });
    expect(black({ projector: { flare: 0.01 }, room: { surround: 'dark' } })).toBeGreaterThan(2 * flat);
  });

  it('settles the shadows last: the toe takes what flare left', () => {
    const flat = black({ projector: { flare: 0.01 } });
    const settled = black({ projector: { flare: 0.01 }, rolloff: { toe: 0.5 } });
    // The toe's curve at that light: 1 - 0.5 exp(-light / 0.02) of it.
    expect(settled).toBeCloseTo(flat * (1 - 0.5 * Math.exp(-flat / 0.02)), 6);
  });

  it('unfades before it prints: no printing makes up for the order', () => {
    const stock = { dyes: 'reversal-early', loss: { cyan: 0.4 } };
    const [r, g] = through(lookOf({ ...linear, stock, print: { saturation: 0 } }), [0.4, 0.3, 0.3]);
    expect(r).toBeCloseTo(g, 9);
  });
});
