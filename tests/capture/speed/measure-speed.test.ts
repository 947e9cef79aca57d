import { describe, expect, it } from 'vitest';
import { normalRandom, seededRandom } from '../../../src/maths/random.js';
import { measureSpeed, type SpeedSettings } from '../../../src/capture/speed/measure-speed.js';
import { readSeries } from '../../../src/capture/speed/series.js';
import { speedText } from '../../../src/capture/speed/speed-text.js';
import { record, type Shot, truthOf } from '../../bench/capture-speed/record.js';

/** The figures that `capture speed` is held to: speed within 0.5 %, flicker within 10 % of itself. */
const speedShare = 0.005;
const flickerShare = 0.1;

interface Changes {
  readonly projector?: Partial<Shot['projector']>;
  readonly film?: Partial<Shot['film']>;
  readonly shot?: Partial<Omit<Shot, 'projector' | 'film'>>;
}

function shotOf({ projector, film, shot }: Changes): Shot {
  return {
    projector: { filmFps: 18.2, blades: 3, openShare: 0.5, edge: 0.15, phase: 0.3, ...projector },
    film: { kind: 'street', seed: 21, grain: 0.02, ...film },
    cameraFps: 25,
    exposureS: 1.05 / 54.6,
    seconds: 8,
    noise: 0.01,
    exposureNoise: 0.001,
    ...shot,
  };
}

async function reportOf(shot: Shot, settings: Partial<SpeedSettings> = {}) {
  const { projector, cameraFps, exposureS } = shot;
  const series = await readSeries(record(shot));
  const report = measureSpeed(series, {
    nominalFps: 18,
    blades: projector.blades,
    cameraFps,
    exposureS,
    ...settings,
  });
  return { report, truth: truthOf(shot) };
}

describe('speed and flicker of simulated recordings', () => {
  it.each<[string, Changes, number]>([
    ['18 x 3 at 25, leader', { film: { kind: 'leader' } }, 18],
    [
      '16 2/3 x 2 at 30, a pan with cuts',
      {
        projector: { filmFps: 16.5, blades: 2, swing: 0.001 },
        film: { kind: 'pan', framesAScene: 50 },
        shot: { cameraFps: 30, exposureS: 0.94 / 33 },
      },
      50 / 3,
    ],
    [
      '24 x 5 at 50, noisy',
      {
        projector: { filmFps: 24.3, blades: 5 },
        shot: { cameraFps: 50, exposureS: 1.04 / 121.5, seconds: 6, noise: 0.02 },
      },
      24,
    ],
  ])('%s', { timeout: 60_000 }, async (_, changes, nominalFps) => {
    const { report, truth } = await reportOf(shotOf(changes), { nominalFps });
    expect(Math.abs(report.speed!.filmFps / truth.filmFps - 1)).toBeLessThan(speedShare);
    expect(Math.abs(report.flicker.percent / truth.percentFlicker - 1)).toBeLessThan(flickerShare);
    expect(report.flicker.seen).toBe(true);
  });

  it('tells how film frames fall on the recording’s frames', { timeout: 60_000 }, async () => {
    const { report, truth } = await reportOf(shotOf({}));
    const { duplicated, blended, lost } = report.filmOnFrames!;
    // Frames whose lesser film frame gives about a tenth of the light fall to either side.
    const doubtful = 0.05 * report.frames;
    expect(Math.abs(duplicated - truth.duplicated)).toBeLessThan(doubtful);
    expect(Math.abs(blended - truth.blended)).toBeLessThan(doubtful);
    expect(lost).toBe(0);
    expect(report.confidence).toBe('sure');
  });

  it('reads the speed off the pictures where the exposure sees no flicker', { timeout: 60_000 }, async () => {
    const { report } = await reportOf(shotOf({ shot: { exposureS: 1 / 54.6 } }));
    expect(Math.abs(report.speed!.filmFps / 18.2 - 1)).toBeLessThan(speedShare);
    expect(report.speed!.from).toEqual(['pictures']);
    expect(report.flicker.seen).toBe(false);
    expect(speedText(report)).toMatch(
      /none seen of 3 blades at 18\.[12]\d* fps; less than (0\.[1-9]|[1-9][0-9.]*) % would not show/,
    );
  });

  it('knows no speed where nothing repeats', { timeout: 60_000 }, async () => {
    // Flicker-free, at a speed far from the one that is searched about.
    const shot = shotOf({ film: { kind: 'leader' }, shot: { exposureS: 1 / 54.6 } });
    const { report } = await reportOf(shot, { nominalFps: 24 });
    expect(report.confidence).toBe('unknown');
    expect(report.speed).toBeUndefined();
    expect(speedText(report)).toMatch(/speed unknown/);
  });

  it('finds a slow beat that comes again', { timeout: 60_000 }, async () => {
    // 50.4 pulses a second against 50: six beats.
    const shot = shotOf({
      projector: { filmFps: 16.8 },
      film: { kind: 'leader' },
      shot: { exposureS: 1.1 / 50, seconds: 16 },
    });
    const { report } = await reportOf(shot, { nominalFps: 50 / 3 });
    const { filmFps, others } = report.speed!;
    expect(Math.min(...[filmFps, ...others].map((fps) => Math.abs(fps / 16.8 - 1)))).toBeLessThan(speedShare);
  });

  it('takes no harmonic of a beat with flanks for the speed, however short the recording', async () => {
    // 53.1 pulses a second beat at 3.1 Hz, as do 71.9 and 78.1: all that lies within 15 % of 24 fps.
    const [frames, exposureS, pulses] = [125, 1 / 50, 53.1];
    const litUntil = (pulse: number) => Math.floor(pulse) + Math.min(pulse - Math.floor(pulse), 0.5) / 0.5;
    const random = seededRandom(6);
    const recorded = Array.from({ length: frames }, (_, n) => {
      const from = (pulses * n) / 25 + 0.2;
      const light = (0.5 * (litUntil(from + pulses * exposureS) - litUntil(from))) / (pulses * exposureS);
      return {
        width: 64,
        height: 48,
        light: new Float32Array(64 * 48).map(() => light + 0.002 * normalRandom(random)),
      };
    });
    const series = await readSeries(recorded);
    const report = measureSpeed(series, { nominalFps: 24, blades: 3, cameraFps: 25 });
    const found = [report.speed!.filmFps, ...report.speed!.others].sort((a, b) => a - b);
    expect(found[0]).toBeCloseTo(71.9 / 3, 1);
    expect(found[1]).toBeCloseTo(78.1 / 3, 1);
  });

  it(
    'names the other speed where a camera near the film’s rate sees both alike',
    { timeout: 60_000 },
    async () => {
      const shot = shotOf({
        projector: { filmFps: 23.8, blades: 2 },
        shot: { cameraFps: 24, exposureS: 1.06 / 47.6, seconds: 12 },
      });
      const { report } = await reportOf(shot, { nominalFps: 24 });
      const { filmFps, others } = report.speed!;
      // The beat is the same at 24 - 0.2 and 24 + 0.2.
      const [low, high] = [filmFps, ...others].sort((a, b) => a - b);
      expect(report.confidence).toBe('open');
      expect(low).toBeCloseTo(23.8, 2);
      expect(high).toBeCloseTo(24.2, 2);
    },
  );

  it('finds jumps of the frame line, and none where there are none', { timeout: 60_000 }, async () => {
    const jumps = [
      { frame: 40, share: 0.2 },
      { frame: 100, share: -0.3 },
    ];
    const { report } = await reportOf(shotOf({ film: { jumps } }));
    expect(report.jumps.map(({ seconds }) => Math.round(10 * seconds) / 10)).toEqual([
      Math.round((10 * 40) / 18.2) / 10,
      Math.round((10 * 100) / 18.2) / 10,
    ]);
    expect(Math.abs(report.jumps[0].share + 0.2)).toBeLessThan(0.03);
    const quiet = await reportOf(shotOf({ film: { kind: 'pan', framesAScene: 30 } }));
    expect(quiet.report.jumps).toEqual([]);
  });
});

describe('a light without film and without flicker', () => {
  const [frames, width, height] = [400, 64, 48];
  it.each<[string, (passed: number) => number]>([
    ['stays', () => 0.4],
    ['rises evenly', (passed) => 0.4 + 0.02 * passed],
    ['warms up', (passed) => 0.4 - 0.02 * Math.exp(-3 * passed)],
    ['swings once', (passed) => 0.4 + 0.01 * Math.sin(2 * Math.PI * passed)],
  ])('that %s is no projector that stands still against the camera', { timeout: 60_000 }, async (_, at) => {
    const random = seededRandom(4);
    const recorded = Array.from({ length: frames }, (_, n) => ({
      width,
      height,
      light: Float32Array.from(
        { length: width * height },
        () => at(n / frames) + 0.01 * normalRandom(random),
      ),
    }));
    const series = await readSeries(recorded);
    const report = measureSpeed(series, { nominalFps: 18, blades: 3, cameraFps: 25, exposureS: 1 / 50 });
    expect([report.confidence, report.flicker.seen]).toEqual(['unknown', false]);
  });
});

describe('any recording', () => {
  const flat = (light: (n: number) => number, frames = 60) =>
    Array.from({ length: frames }, (_, n) => ({
      width: 32,
      height: 24,
      light: new Float32Array(32 * 24).fill(light(n)),
    }));
  it.each([
    ['black', flat(() => 0)],
    ['burnt out', flat(() => 1)],
    ['all alike', flat(() => 0.4)],
    ['black and white in turn', flat((n) => n % 2)],
    ['one pixel', flat(() => 0.4).map(() => ({ width: 1, height: 1, light: new Float32Array([0.4]) }))],
  ])('%s: no speed, and words without NaN', async (_, frames) => {
    const series = await readSeries(frames);
    const report = measureSpeed(series, { nominalFps: 18, blades: 3, cameraFps: 25 });
    expect(report.confidence).toBe('unknown');
    expect(speedText(report)).toMatch(/^[\x20-\x7e\n]+$/);
    expect(speedText(report)).not.toMatch(/NaN|undefined|Infinity/);
  });
});
