import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { primaries } from '../../src/colour/primaries/index.js';
import { rangeScale, toFull } from '../../src/colour/signal-range.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { compileLook } from '../../src/look/compile-look.js';
import { anyLook, customCamera, lookOf, through, usualLook } from './looks.js';

const seed = 101;
/** What a lattice of six decimals cannot tell. */
const identity = 1e-6;
/** The same where a channel has no light: its rounding, 1e-15 of white, through the endless slope of a pure power of 2.6. */
const darkChannel = 2e-6;
/** A step that asks for next to nothing, so that the whole way is gone and not left out. */
const next = { print: { exposureStops: 1e-12 } };

const encodings = {
  ...Object.fromEntries(Object.keys(transferFunctions).map((name) => [name, name])),
  custom: customCamera.encoding,
};
const primariesChoices = {
  ...Object.fromEntries(Object.keys(primaries).map((name) => [name, name])),
  custom: customCamera.primaries,
};

/** Code values of the cube as a signal has them, with those that some encodings cannot give back left out. */
function codesOf(encoding: string, range: 'full' | 'legal'): number[][] {
  const { black, white } = rangeScale[range];
  // BT.709's rounded constants leave the signals just below 0.0813 without a light of their own.
  const steps = [0, 0.02, 0.15, 0.3, 0.5, 0.7, 0.9, 1].filter((signal) => encoding !== 'pq' || signal !== 0);
  const codes = steps.map((signal) => black + signal * (white - black));
  return codes.flatMap((r) => codes.flatMap((g) => codes.map((b) => [r, g, b])));
}

describe('a look that asks for nothing', () => {
  it.each(
    Object.entries(encodings).flatMap(([encoding, how]) =>
      Object.entries(primariesChoices).flatMap(([name, primaries]) =>
        (['full', 'legal'] as const).map((range) => ({
          encoding,
          name,
          range,
          camera: { encoding: how, primaries, range },
        })),
      ),
    ),
  )('is the identity: $encoding, $name, $range', ({ encoding, range, camera }) => {
    const codes = codesOf(encoding, range);
    for (const fields of [{ camera }, { camera, delivery: camera }, { camera, ...next }]) {
      const values = Float64Array.from(codes.flat());
      compileLook(lookOf(fields))(values, codes.length);
      const worst = codes.flat().reduce((most, code, i) => Math.max(most, Math.abs(values[i] - code)), 0);
      expect(worst, JSON.stringify(fields)).toBeLessThan(encoding === 'gamma-2.6' ? darkChannel : identity);
    }
  });

  it('is the identity by another name of the same encoding', () => {
    const look = lookOf({ camera: { encoding: 'bt1886' }, delivery: { encoding: 'gamma-2.4' } });
    for (const code of [0, 0.1, 0.5, 1]) expect(through(look, [code, code, code])[1]).toBeCloseTo(code, 12);
  });

  it('leaves even codes beyond the cube alone', () =>
    expect(through(lookOf({}), [-0.5, 1.5, 0.5])).toEqual([-0.5, 1.5, 0.5]));
});

describe('the camera', () => {
  it.each([
    ['hlg', 0.75, 1],
    ['pq', 0.580689, 1],
    ['srgb', 1, 1],
    ['printing-density-log', 685 / 1023, 1],
  ] as const)('%s has diffuse white, its open gate, at signal %s', (encoding, white, light) => {
    // BT.2408: 75 % HLG, 58 % PQ (203 cd/m2); code 685 of the printing-density log.
    const look = lookOf({ camera: { encoding }, delivery: { encoding: 'linear' } });
    through(look, [white, white, white]).forEach((value) =>
      expect(Math.abs(value - light)).toBeLessThan(1e-5),
    );
  });

  it('that put the open gate lower keeps it there, and everything below in proportion', () => {
    const look = lookOf({ camera: { openGate: 0.5 }, delivery: { encoding: 'linear' } });
    const { encode } = transferFunctions.srgb;
    for (const share of [0.1, 0.6, 1]) {
      const code = encode(0.5 * share);
      expect(through(look, [code, code, code])[0]).toBeCloseTo(0.5 * share, 12);
    }
  });

  it('is exposed as printed: a stop doubles its light, in every encoding, range and primaries', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(encodings)),
        fc.constantFrom(...Object.values(primariesChoices)),
        fc.constantFrom('full' as const, 'legal' as const),
        fc.double({ min: 0.3, max: 0.6, noNaN: true }),
        (encoding, primaries, range, signal) => {
          const { black, white } = rangeScale[range];
          const code = black + signal * (white - black);
          const look = lookOf({
            camera: { encoding, primaries, range },
            print: { exposureStops: 1 },
            delivery: { encoding: 'linear', range: 'full' },
          });
          const same = lookOf({
            camera: { encoding, primaries, range },
            delivery: { encoding: 'linear', range: 'full' },
          });
          const [once] = through(same, [code, code, code]);
          const [twice] = through(look, [code, code, code]);
          return Math.abs(twice - Math.min(1, 2 * once)) < 1e-9;
        },
      ),
      { seed },
    ));

  it('in legal range is delivered in legal range, black at 64 and white at 940 of 1023, never beyond', () => {
    const look = lookOf({ camera: { range: 'legal' }, print: { exposureStops: 1 } });
    through(look, [64 / 1023, 64 / 1023, 64 / 1023]).forEach((value) =>
      expect(value).toBeCloseTo(64 / 1023, 12),
    );
    through(look, [1, 1, 1]).forEach((value) => expect(value).toBeCloseTo(940 / 1023, 12));
    through(look, [0, 0, 0]).forEach((value) => expect(value).toBeCloseTo(64 / 1023, 12));
  });
});

describe('the delivery', () => {
  it('in wider primaries writes the same light smaller, white as white', () => {
    const look = lookOf({
      delivery: { primaries: 'bt2020', encoding: 'linear' },
      camera: { encoding: 'linear' },
    });
    // The first column of BT.2087's matrix from BT.709 to BT.2020.
    through(look, [1, 0, 0]).forEach((value, k) =>
      expect(Math.abs(value - [0.6274, 0.0691, 0.0164][k])).toBeLessThan(5e-5),
    );
    through(look, [1, 1, 1]).forEach((value) => expect(value).toBeCloseTo(1, 12));
  });

  it('in narrower primaries brings colours in instead of cutting them', () => {
    const fields = { camera: { primaries: 'bt2020', encoding: 'linear' }, delivery: { primaries: 'bt709' } };
    const cut = { ...fields, delivery: { ...fields.delivery, gamutCompression: false } };
    const [open, closed] = [lookOf(fields), lookOf(cut)];
    const greens = [
      [0.1, 0.6, 0.1],
      [0.05, 0.6, 0.1],
      [0.02, 0.6, 0.1],
    ];
    const reds = greens.map((code) => through(open, code)[0]);
    expect(reds[0]).toBeGreaterThan(reds[1]);
    expect(reds[1]).toBeGreaterThan(reds[2]);
    for (const green of greens) expect(through(closed, green)[0]).toBe(0);
  });

  it('in primaries beyond all light does not jump where blue takes luminance away', () => {
    const look = lookOf({ camera: { ...customCamera, encoding: 'linear' }, print: { saturation: 0.7 } });
    // Between these two the luminance of the colour passes zero.
    const [below, above] = [0.7488, 0.7489].map((blue) => through(look, [0.014, 0.05, blue]));
    below.forEach((value, k) => expect(Math.abs(above[k] - value)).toBeLessThan(1e-3));
    expect(Math.max(...below)).toBeGreaterThan(0.1);
  });

  it('without compression leaves colours that fit alone', () =>
    fc.assert(
      fc.property(fc.tuple(fc.integer({ min: 0, max: 255 }), fc.integer({ min: 0, max: 255 })), ([r, b]) => {
        const code = [r / 255, 0.5, b / 255];
        const [one, other] = [true, false].map((gamutCompression) =>
          through(lookOf({ ...next, delivery: { gamutCompression } }), code),
        );
        return one.every((value, k) => Math.abs(value - other[k]) < identity);
      }),
      { seed, numRuns: 30 },
    ));
});

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

describe('every look', () => {
  const around = Array.from({ length: 343 }, (_, i) => [i % 7, Math.floor(i / 7) % 7, Math.floor(i / 49)])
    .flat()
    .map((step) => -0.5 + step / 3);

  it.each([true, false])('gives numbers from 0 to 1 in the cube and beyond, usual values %s', (usual) =>
    fc.assert(
      fc.property(anyLook(usual), (look) => {
        const values = Float64Array.from(around);
        compileLook({ ...look, print: look.print ?? { ...lookOf({ print: next.print }).print! } })(
          values,
          343,
        );
        return values.every((value) => value >= 0 && value <= 1);
      }),
      { seed, numRuns: 120 },
    ),
  );

  it('gives no NaN for infinite codes, and does not carry a NaN into the next colour', () =>
    fc.assert(
      fc.property(usualLook, (look) => {
        const values = Float64Array.of(Infinity, 0, 0, -Infinity, 1, 1, NaN, NaN, NaN, 0.5, 0.5, 0.5);
        const run = compileLook(look);
        run(values, 4);
        if (values.some(Number.isNaN)) return false;
        const alone = Float64Array.of(0.5, 0.5, 0.5);
        compileLook(look)(alone, 1);
        return alone.every((value, k) => Math.abs(value - values[9 + k]) < 1e-9);
      }),
      { seed, numRuns: 50 },
    ));

  it('gives a colour the same code alone as in company', () =>
    fc.assert(
      fc.property(anyLook(true), (look) => {
        const whole = Float64Array.from(around, (code) => Math.min(1, Math.max(0, code)));
        const given = whole.slice();
        compileLook(look)(whole, 343);
        return [0, 57, 171, 342].every((i) => {
          const alone = through(look, [...given.subarray(3 * i, 3 * i + 3)]);
          // Newton's rest, seen through the steepest encoding at black.
          return alone.every((value, k) => Math.abs(value - whole[3 * i + k]) < 1e-5);
        });
      }),
      { seed, numRuns: 50 },
    ));

  it('is one function: what it was asked before does not matter', () => {
    const look = lookOf({
      stock: { loss: { cyan: 0.3 } },
      projector: { lamp: 'incandescent' },
      camera: { range: 'legal' },
    });
    const run = compileLook(look);
    const first = Float64Array.of(0.6, 0.5, 0.4);
    run(first, 1);
    run(Float64Array.from(around), 343);
    const second = Float64Array.of(0.6, 0.5, 0.4);
    run(second, 1);
    second.forEach((value, k) => expect(Math.abs(value - first[k])).toBeLessThan(1e-9));
    expect(toFull(second[0], 'legal')).toBeGreaterThan(0);
  });
});
