import { describe, expect, it } from 'vitest';
import { measureSpeed } from '../../src/capture/speed/measure-speed.js';
import { readSeries } from '../../src/capture/speed/series.js';
import { speedText } from '../../src/capture/speed/speed-text.js';
import { reportSpeed } from '../../src/jobs/report-speed.js';
import { palette } from '../../src/preview/palette.js';
import { record } from '../bench/capture-speed/record.js';
import { fonts } from '../preview/fonts.js';

/** A leader under three blades at 18.2 fps, read as if it had so many. */
async function reportOf(blades: number) {
  const series = await readSeries(
    record({
      projector: { filmFps: 18.2, blades: 3, openShare: 0.5, edge: 0.15, phase: 0.3 },
      film: { kind: 'leader', seed: 4, grain: 0.02 },
      cameraFps: 25,
      exposureS: 1 / 50,
      seconds: 6,
      noise: 0.01,
      exposureNoise: 0.001,
    }),
  );
  return measureSpeed(series, { nominalFps: 18, blades, cameraFps: 25 });
}

function pixelsOfLine(report: Awaited<ReturnType<typeof reportOf>>): number {
  const { data } = reportSpeed(report, 'test.mkv', fonts);
  const [red, green, blue] = palette.comparison;
  let count = 0;
  for (let i = 0; i < data.length; i += 3)
    if (data[i] === red && data[i + 1] === green && data[i + 2] === blue) count++;
  return count;
}

describe('the picture of a test recording', () => {
  it('draws what flicker does where it was seen', async () => {
    expect(pixelsOfLine(await reportOf(3))).toBeGreaterThan(500);
  });

  it('draws no flicker that was not seen, as where the blades are not what was said', async () => {
    const report = await reportOf(2);
    expect(report.flicker.seen).toBe(false);
    expect(pixelsOfLine(report)).toBe(0);
    expect(speedText(report)).toMatch(/none seen of 2 blades at 18\.2 fps/);
  });

  it('says what it looked for where it knows no speed', async () => {
    const series = await readSeries(
      Array.from({ length: 60 }, () => ({
        width: 32,
        height: 24,
        light: new Float32Array(32 * 24).fill(0.4),
      })),
    );
    const text = speedText(measureSpeed(series, { nominalFps: 18, blades: 1, cameraFps: 25 }));
    expect(text).toMatch(/blades \(--blades\) are not what was said/);
    expect(text).toMatch(/none seen of 1 blade at about 18 fps/);
  });
});
