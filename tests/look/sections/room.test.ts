import { describe, expect, it } from 'vitest';
import { lookOf, primariesChoices, through } from '../looks.js';

/** To the model the gate without film is film of less than no dye, whose colour before a lamp is off by half a per cent. */
const noFilm = 0.006;

describe('the open gate', () => {
  it.each(
    ['incandescent', 'incandescent-dim', 'tungsten-halogen', 'xenon'].flatMap((lamp) =>
      Object.values(primariesChoices).map((primaries) => [lamp, primaries] as const),
    ),
  )(
    'before %s just fits the device of %j in every room: its highest channel is at white',
    (lamp, primaries) => {
      for (const surround of ['average', 'dim', 'dark'])
        for (const displaySurround of ['average', 'dim', 'dark'])
          for (const adaptation of [0, 0.7, 1]) {
            const look = lookOf({
              projector: { lamp, flare: 0.004 },
              room: { surround, displaySurround, adaptation },
              delivery: { primaries, encoding: 'linear' },
              camera: { encoding: 'linear' },
            });
            expect(Math.abs(Math.max(...through(look, [1, 1, 1])) - 1)).toBeLessThan(noFilm);
            // Not cut: a little less light is still told apart.
            expect(Math.max(...through(look, [0.98, 0.98, 0.98]))).toBeLessThan(0.995);
          }
    },
  );

  it('is the warmer the less the eye adapts, and the brighter the screen the less warm', () => {
    const warmth = (room: object) => {
      const [r, , b] = through(lookOf({ projector: { lamp: 'incandescent' }, room }), [1, 1, 1]);
      return r - b;
    };
    expect(warmth({ adaptation: 0.5 })).toBeGreaterThan(warmth({ adaptation: 0.8 }));
    expect(warmth({ adaptation: 1 })).toBeLessThan(0.002);
    expect(warmth({ screenLuminance: 5 })).toBeGreaterThan(warmth({ screenLuminance: 300 }));
    expect(warmth({ surround: 'dark', displaySurround: 'dark' })).toBeGreaterThan(warmth({}));
  });
});
