import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { channelCrossing, sampleCurves } from '../../src/lut/curves.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import type { Run } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';

const gammas = [0.8, 1, 1.3];
/** Every channel by itself. */
const separate: Run = (run, count) => {
  for (let i = 0; i < 3 * count; i++) run[i] **= gammas[i % 3];
};
/** Green takes a tenth of red: nowhere more than 0.1 beyond what the greys say. */
const mixing: Run = (run, count) => {
  for (let i = 0; i < 3 * count; i += 3) run[i + 1] = 0.9 * run[i + 1] + 0.1 * run[i];
};

describe('curves of a transform', () => {
  it('are the transform itself at their entries, where channels go by themselves', () => {
    const random = seededRandom(7);
    const codes = Float64Array.from({ length: 300 }, () => Math.floor(random() * 256) / 255);
    const [exact, table] = [codes.slice(), codes.slice()];
    separate(exact, 100);
    sampleLut(sampleCurves(separate, 256))(table, 100);
    table.forEach((value, i) => expect(value).toBeCloseTo(exact[i], 12));
    expect(channelCrossing(separate).largest).toBe(0);
  });

  it('say how far they are off, and where, when channels mix', () => {
    const { largest, at, channel } = channelCrossing(mixing);
    expect(largest).toBeCloseTo(0.1, 12);
    expect(channel).toBe(1);
    expect(Math.abs(at[0] - at[1])).toBe(1);
  });

  it('a difference beyond what a device gives out does not count; one that is no number does', () => {
    expect(channelCrossing((run) => run.forEach((_, i) => (run[i] = 2 + run[i - (i % 3)]))).largest).toBe(0);
    const holed: Run = (run, count) => {
      for (let i = 0; i < 3 * count; i += 3) if (run[i] !== run[i + 1]) run[i] = NaN;
    };
    expect(channelCrossing(holed).largest).toBeNaN();
  });

  it.each([0, 1, 2.5, 65537, NaN])('%s entries are refused', (size) => {
    expect(() => sampleCurves(separate, size)).toThrow(InputError);
  });
});
