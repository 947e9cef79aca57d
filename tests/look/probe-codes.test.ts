import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { highestOutness } from '../../src/delivery/gamut-compression.js';
import { lightPath } from '../../src/look/light-path.js';
import { probeCodes } from '../../src/look/probe-codes.js';
import { codesOfFilm, readCamera } from '../../src/look/sections/camera.js';
import { deliveryOf, toDeliveryPrimaries } from '../../src/look/sections/delivery.js';
import { inTurn } from '../../src/look/sections/section.js';
import { seededRandom } from '../../src/maths/random.js';
import { lookOf, usualLook } from './looks.js';

const seed = 101;

/** Luminance weights that no primaries have, since any will do. */
const evenly = [1 / 3, 1 / 3, 1 / 3] as const;

/** Colours between the probes may lie a little further out: they are the corners of cells an eighth of the cube wide. */
const betweenProbes = 1.02;

describe('the probes of a look', () => {
  it('lie between no light and the open gate, on the faces of the cube, each once', () => {
    const { camera } = lookOf({ camera: { encoding: 'srgb', range: 'legal', openGate: 0.8 } });
    const { none, openGate } = codesOfFilm(camera);
    const codes = probeCodes(camera);
    const rows = Array.from({ length: codes.length / 3 }, (_, i) => [...codes.subarray(3 * i, 3 * i + 3)]);
    expect(new Set(rows.map(String)).size).toBe(9 ** 3 - 7 ** 3);
    for (const row of rows) {
      expect(Math.min(...row) === none || Math.max(...row) === openGate).toBe(true);
      for (const code of row) expect(code >= none && code <= openGate).toBe(true);
    }
  });

  it('reach as far from grey as any colour of the cube', () =>
    fc.assert(
      fc.property(usualLook, (look) => {
        const delivery = deliveryOf(look.delivery, look.camera);
        const outness = (codes: Float64Array) => {
          const arrive = inTurn([readCamera(look.camera), ...lightPath(look), toDeliveryPrimaries(delivery)]);
          arrive(codes, codes.length / 3);
          return highestOutness(codes, codes.length / 3, evenly);
        };
        const { none, openGate } = codesOfFilm(look.camera);
        const random = seededRandom(seed);
        const inside = Float64Array.from({ length: 900 }, () => none + (openGate - none) * random());
        expect(outness(inside)).toBeLessThanOrEqual(betweenProbes * outness(probeCodes(look.camera)));
      }),
      { seed, numRuns: 60 },
    ));
});
