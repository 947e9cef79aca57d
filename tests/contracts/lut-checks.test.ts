import { describe, expect, it } from 'vitest';
import type { Check, CheckContext, Finding } from '../../src/lut/checks/index.js';
import { checkLut, checks } from '../../src/lut/checks/index.js';
import { seededRandom } from '../../src/maths/random.js';
import { contextOf, curvesOf, identity, latticeOf } from '../lut/checks/contexts.js';

const random = seededRandom(19580414);
const randomColours = Float64Array.from({ length: 3000 }, random);
const greys = Float64Array.from({ length: 768 }, (_, i) => Math.floor(i / 3) / 255);
const samples = Float64Array.from([...randomColours, ...greys]);
const unchanged = () => undefined;

/** For every check, LUTs made to fail it. */
const madeToFail: Record<keyof typeof checks, Record<string, CheckContext>> = {
  structure: {
    'a value that is no number': contextOf(latticeOf((code) => (code === 1 ? NaN : code))),
    'an infinite value': contextOf(curvesOf((code) => (code === 1 ? Infinity : code))),
    'a value missing': contextOf({ ...identity, values: identity.values.slice(1) }),
    'another domain': contextOf({ ...identity, domainMin: [0, -0.5, 0] }),
  },
  size: {
    'more points than programs load': contextOf(latticeOf((code) => code, 130)),
    'a size seldom loaded': contextOf(latticeOf((code) => code, 32)),
  },
  outputRange: {
    'values above 1': contextOf(latticeOf((code) => 1.2 * code)),
    'values below 0': contextOf(latticeOf((code) => 1.2 * code - 0.2)),
    'full range where legal is due': { ...contextOf(identity), range: 'legal' },
  },
  neutralRises: {
    'a curve that falls in one channel': contextOf(
      latticeOf((c, ch) => (ch === 1 ? c + 0.3 * Math.sin(9 * c) : c)),
    ),
    'a negative': contextOf(latticeOf((code) => 1 - code)),
  },
  foldOvers: {
    'a folded channel': contextOf(
      latticeOf((code, channel) => (channel === 2 ? Math.abs(2 * code - 1) : code)),
    ),
    'a folded curve': contextOf(curvesOf((code, channel) => (channel === 2 ? Math.abs(2 * code - 1) : code))),
  },
  highlights: {
    'white cut off': contextOf(latticeOf((code) => Math.min(1, 1.1 * code))),
    'red alone cut off': contextOf(
      latticeOf((code, channel) => (channel === 0 ? Math.min(1, 1.2 * code) : code)),
    ),
    'white cut off below 1': contextOf(latticeOf((code) => Math.min(0.8, code))),
    'values beyond 1, which the device cuts off': contextOf(latticeOf((code) => 1.1 * code)),
  },
  shadows: {
    'black cut off': contextOf(latticeOf((code) => Math.max(0, 1.1 * code - 0.1))),
    'black cut off above 0': contextOf(latticeOf((code) => Math.max(0.1, code))),
  },
  endPoints: {
    'a dull white': contextOf(latticeOf((code) => 0.6 * code)),
    'a grey black': contextOf(latticeOf((code) => 0.3 + 0.7 * code)),
  },
  banding: {
    'a tear': contextOf(latticeOf((code) => (code < 0.5 ? 0.5 * code : 0.5 + 0.5 * code))),
    'eight greys': contextOf(curvesOf((code) => Math.round(7 * code) / 7)),
  },
  latticeError: {
    'another look': {
      ...contextOf(identity),
      samples,
      exact: (run) => void run.forEach((c, i) => (run[i] = c ** 1.1)),
    },
  },
  warmth: {
    'a green cast': contextOf(latticeOf((code, channel) => (channel === 1 ? code : 0.8 * code))),
    'candle light': contextOf(latticeOf((code, channel) => [1, 0.55, 0.1][channel] * code)),
  },
  midGreyContrast: {
    fog: contextOf(latticeOf((code) => 0.4 + 0.1 * code)),
    lith: contextOf(
      latticeOf((code) => code ** 3),
      'gamma-2.4',
    ),
  },
};

const doingNothing: Record<string, CheckContext> = {
  'sRGB, 17 points': contextOf(latticeOf((code) => code, 17)),
  'sRGB, 33 points': contextOf(identity),
  'sRGB, 65 points': contextOf(latticeOf((code) => code, 65)),
  'sRGB, as curves': contextOf(curvesOf((code) => code)),
  'BT.1886 in legal range': contextOf(identity, 'bt1886', 'legal'),
  'BT.709 in legal range': contextOf(identity, 'bt709', 'legal'),
  'a log curve': contextOf(identity, 'acescct'),
  HLG: contextOf(identity, 'hlg', 'legal'),
};

const fails = ({ pass }: Finding) => !pass;

describe.each(Object.entries<Check>(checks))('the check %s', (name, check) => {
  it('asks a question', () => {
    expect(check.question).toMatch(/^[A-Z].*\?$/);
  });

  it.each(Object.entries(doingNothing))('passes a LUT that changes nothing: %s', (_, context) => {
    const findings = check.ask({ ...context, samples, exact: unchanged });
    expect(findings.filter(fails).map(({ sentence }) => sentence)).toEqual([]);
  });

  it.each(Object.entries(madeToFail[name as keyof typeof checks]))('fails %s', (_, context) => {
    expect(check.ask(context).filter(fails).length).toBeGreaterThan(0);
  });

  it('answers in one plain sentence with figure, limit and unit', () => {
    const contexts = [
      { ...contextOf(identity), samples, exact: unchanged },
      ...Object.values(madeToFail[name as keyof typeof checks]),
    ];
    for (const finding of contexts.flatMap((context) => check.ask(context))) {
      expect(finding.name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(finding.sentence).toMatch(/^[A-Z0-9][^\n]*\.$/);
      expect(finding.sentence).not.toMatch(/NaN|Infinity|undefined|\. [A-Z]/);
      expect(Number.isFinite(finding.figure)).toBe(true);
      expect(Number.isFinite(finding.limit)).toBe(true);
      expect(typeof finding.unit).toBe('string');
      expect(['fault', 'note']).toContain(finding.severity);
    }
  });

  it('leaves the LUT and the samples as they are', () => {
    const context = {
      ...contextOf(latticeOf((code) => code ** 1.2)),
      samples: samples.slice(),
      exact: unchanged,
    };
    const before = context.lut.values.slice();
    check.ask(context);
    expect(context.lut.values).toEqual(before);
    expect(context.samples).toEqual(samples);
  });
});

describe('all checks', () => {
  it('give every finding a name of its own', () => {
    const names = checkLut({ ...contextOf(identity), samples, exact: unchanged }).map(
      (finding) => finding.name,
    );
    expect(new Set(names).size).toBe(names.length);
  });

  it('say nothing of the exact look when there is none to compare with', () => {
    expect(checkLut(contextOf(identity)).filter((finding) => finding.name.startsWith('lattice'))).toEqual([]);
    expect(
      checks.latticeError.ask({ ...contextOf(identity), exact: unchanged, samples: new Float64Array(0) }),
    ).toEqual([]);
  });

  it('ask no more of a table that is no table of numbers', () => {
    const broken = contextOf(latticeOf((code) => (code === 1 ? NaN : code)));
    expect(checkLut(broken).map((finding) => finding.name)).toEqual(['values-finite', 'domain']);
  });
});

describe('what makes a LUT not good', () => {
  const faults = (context: CheckContext) =>
    checkLut(context)
      .filter((finding) => fails(finding) && finding.severity === 'fault')
      .map((finding) => finding.name);

  it.each([
    ['warm', (code: number, channel: number) => [1, 0.85, 0.6][channel] * code],
    ['very warm', (code: number, channel: number) => [1, 0.7, 0.35][channel] * code],
    ['cold', (code: number, channel: number) => [0.8, 0.9, 1][channel] * code],
    ['soft at both ends', (code: number) => 0.04 + 0.9 * code * code * (3 - 2 * code)],
    ['flat', (code: number) => 0.2 + 0.5 * code],
    ['harder, softly rolled off', (code: number) => code ** 2 / (code ** 2 + (1 - code) ** 2)],
    ['black and white', () => 0],
  ])('is not that it is %s', (name, curve) => {
    const grey = (run: Float64Array, count: number) => {
      for (let i = 0; i < 3 * count; i += 3)
        run.fill(0.2126 * run[i] + 0.7152 * run[i + 1] + 0.0722 * run[i + 2], i, i + 3);
    };
    const lut = latticeOf(curve);
    if (name === 'black and white') {
      identity.values.forEach((value, i) => (lut.values[i] = value));
      grey(lut.values, lut.values.length / 3);
    }
    expect(faults(contextOf(lut))).toEqual([]);
  });

  it.each([
    ['a clipped white', (code: number) => Math.min(1, 1.05 * code)],
    [
      'a clipped white in red',
      (code: number, channel: number) => (channel === 0 ? Math.min(1, 1.1 * code) : code),
    ],
    ['a blocked black', (code: number) => Math.max(0, (code - 0.1) / 0.9)],
    ['nothing but white', () => 1],
    ['nothing but black', () => 0],
    ['a negative', (code: number) => 1 - code],
  ])('is %s', (_, curve) => {
    expect(faults(contextOf(latticeOf(curve)))).not.toEqual([]);
  });
});
