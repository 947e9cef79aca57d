import { describe, expect, it } from 'vitest';
import { provenanceOf } from '../../src/jobs/build-look.js';
import {
  type Signal,
  shownWhite,
  signalFromText,
  signalsOf,
  signalText,
  toScreen,
} from '../../src/jobs/signal.js';
import { readLook } from '../../src/look/read-look.js';

const look = (camera: object, more: object = {}) =>
  readLook(JSON.stringify({ name: 'Test', camera, ...more }), 'test.json');

const curve = { base: 2, logSideSlope: 0.1, logSideOffset: 0.5, linSideSlope: 1, linSideOffset: 0.01 };
const custom = {
  red: [0.64, 0.33],
  green: [0.29, 0.6],
  blue: [0.15, 0.06],
  white: [0.31, 0.33],
} satisfies Signal['primaries'];

describe('a signal in words', () => {
  it.each<[string, Signal]>([
    ['without an open gate', { encoding: 'srgb', primaries: 'bt709', range: 'full', openGate: undefined }],
    ['with one', { encoding: 'srgb', primaries: 'bt709', range: 'legal', openGate: 0.8771 }],
    ['with one of many digits', { encoding: 'hlg', primaries: 'bt2020', range: 'full', openGate: 2 / 3 }],
    ['spelt out', { encoding: curve, primaries: custom, range: 'full', openGate: 1.5 }],
  ])('%s is read back', (_, signal) => {
    expect(signalFromText(signalText(signal))).toEqual(signal);
  });

  it.each([
    '',
    'srgb bt709',
    'srgb bt709 half',
    'srgb bt709 full more',
    'srgb bt709 full, open gate at ',
    'srgb bt709 full, open gate at -1',
    'srgb bt709 full, open gate at Infinity',
    'srgb bt709 full, open gate at 1, open gate at 1',
    'srgb bt709 full, open gate at bright',
  ])('%j is none', (text) => {
    expect(signalFromText(text)).toBeUndefined();
  });
});

describe('the open gate of a look', () => {
  it('is written into its files, and taken as seen on a screen from there', () => {
    const bright = look({ encoding: 'hlg', primaries: 'bt2020', openGate: 0.53 });
    const said = new Map(provenanceOf(bright, { version: '0', sha256: () => '' }));
    const { input, output } = signalsOf(bright);
    expect(signalFromText(said.get('takes') ?? '')).toEqual(input);
    expect(signalFromText(said.get('gives') ?? '')).toEqual(output);
    expect(shownWhite(input)).toBe(0.53);
  });

  it('lies at the same level over diffuse white in what the look gives', () => {
    const { output } = signalsOf(
      look({ openGate: 0.5 }, { delivery: { encoding: 'hlg', primaries: 'bt2020' } }),
    );
    // BT.2408: diffuse white of HLG is 75 % signal, 0.2649 of linear light.
    expect(output.openGate).toBeCloseTo(0.5 * 0.2649, 4);
  });

  it('below white changes nothing of what a screen shows', () => {
    expect(toScreen(signalsOf(look({ openGate: 0.6 })).output)).toBeUndefined();
  });
});
