import { describe, expect, it } from 'vitest';
import { measureGateLight } from '../../src/capture/gate-light.js';
import { primaries } from '../../src/colour/primaries/index.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { grey, makeStill } from './stills.js';

const signal = { decode: transferFunctions.srgb.decode, range: 'full', primaries: primaries.bt709 } as const;

describe('the map of the field', () => {
  it('tells the stops of every part against the brightest', () => {
    // half a stop from the top to the foot, alike from left to right
    const still = makeStill((_, y) => grey(0.8 * 2 ** (-0.5 * y)), { width: 320, height: 240 });
    const { map } = measureGateLight(still, signal).evenness!;
    const down = map.stops.length / map.across;
    const rows = Array.from({ length: down }, (_, i) => map.stops[i * map.across]);
    expect(rows[0] - rows[down - 1]).toBeCloseTo((0.5 * (down - 1)) / down, 2);
    for (let i = 0; i < map.stops.length; i++)
      expect(map.stops[i]).toBeCloseTo(rows[Math.floor(i / map.across)], 2);
  });

  it('and its drift of colour are finite for a still of two pixels', () => {
    const { evenness, balance } = measureGateLight(
      makeStill((x) => grey(0.7 + 0.05 * x), { width: 2, height: 1 }),
      signal,
    );
    expect(evenness?.colourDrift).toBeLessThan(1e-3);
    expect(balance?.kelvin).toBeGreaterThan(0);
  });

  it('room is told channel by channel', () => {
    const { exposure } = measureGateLight(
      makeStill(() => [0.8, 0.4, 0.2]),
      signal,
    );
    [0.8, 0.4, 0.2].forEach((light, c) =>
      expect(exposure.channelStopsLeft[c]).toBeCloseTo(-Math.log2(light), 1),
    );
    expect(exposure.stopsLeft).toBe(exposure.channelStopsLeft[0]);
  });
});
