import { describe, expect, it } from 'vitest';
import { illuminants } from '../../src/colour/illuminants/index.js';
import { wavelengthNm } from '../../src/colour/spectrum.js';
import { InputError } from '../../src/errors/input-error.js';
import { sentences } from '../../src/errors/sentence.js';
import { compileLook } from '../../src/look/compile-look.js';
import { lampFileOf, readLampFile, withLampSpectrum } from '../../src/look/lamp-file.js';
import { checkLook } from '../../src/look/read-look.js';

const power = illuminants.a.spectrum;
const table = [...power].map((value, i) => `${wavelengthNm(i)}, ${value}`);

function words(text: string): string {
  try {
    readLampFile(text, 'lamp.csv');
  } catch (error) {
    if (error instanceof InputError) return sentences(error);
    throw error;
  }
  return 'nothing is wrong';
}

describe('a lamp file', () => {
  it.each([
    ['plain', table.join('\n')],
    [
      'with heading, remarks, blank lines, a byte-order mark',
      `\uFEFFnm,power\n# measured\n\n${table.join('\n')}\n`,
    ],
    ['with semicolons and Windows line ends', table.join('\r\n').replaceAll(',', ';')],
    ['with tabs', table.join('\n').replaceAll(', ', '\t')],
  ])('%s is the spectrum it holds', (_, text) =>
    expect(readLampFile(text, 'lamp.csv')).toEqual({ startNm: 380, stepNm: 5, values: [...power] }),
  );

  it('every 10 nm is taken linearly between', () => {
    const { values } = readLampFile(table.filter((_, i) => i % 2 === 0).join('\n'), 'lamp.csv');
    expect(values[1]).toBeCloseTo((power[0] + power[2]) / 2, 12);
  });

  it.each([
    ['', 'lamp.csv: does not describe the whole lamp. Allowed: 10 lines or more from 400 to 700 nm.'],
    [
      table.slice(0, 40).join('\n'),
      'lamp.csv: does not describe the whole lamp. Allowed: 10 lines or more from 400 to 700 nm.',
    ],
    [
      `${table[0]}\n385\n`,
      'lamp.csv, line 2: "385" is not a wavelength in nm and a power. Allowed: two numbers with a decimal point, a comma, semicolon or tab between them.',
    ],
    [
      `${table[0]}\n385, -1\n`,
      'lamp.csv, line 2: "385, -1" is not a wavelength in nm and a power. Allowed: two numbers with a decimal point, a comma, semicolon or tab between them.',
    ],
    [
      '380,5; 3,2',
      'lamp.csv, line 1: "380,5; 3,2" is not a wavelength in nm and a power. Allowed: two numbers with a decimal point, a comma, semicolon or tab between them.',
    ],
    [[table[1], table[0], ...table.slice(2)].join('\n'), 'lamp.csv: the wavelengths do not rise at 380 nm.'],
    [
      table.map((line) => `${line.split(',')[0]},0`).join('\n'),
      'lamp.csv: the lamp lacks red, green or blue light.',
    ],
  ])('that cannot be used is answered in words, case %#', (text, expected) =>
    expect(words(text)).toBe(expected),
  );
});

describe('a look with a lamp file', () => {
  const look = checkLook(
    { name: 'quay', projector: { lamp: { file: 'lamp.csv' }, flare: 0.01 } },
    'quay.json',
  );

  it('names it, and stands alone once it is read', () => {
    expect(lampFileOf(look)).toBe('lamp.csv');
    const whole = withLampSpectrum(look, readLampFile(table.join('\n'), 'lamp.csv'));
    expect(lampFileOf(whole)).toBeUndefined();
    expect(whole.projector?.flare).toBe(0.01);
    const named = checkLook({ name: 'quay', projector: { lamp: 'illuminant-a', flare: 0.01 } }, 'quay.json');
    const [one, other] = [Float64Array.of(0.8, 0.5, 0.3), Float64Array.of(0.8, 0.5, 0.3)];
    compileLook(whole)(one, 1);
    compileLook(named)(other, 1);
    expect([...one]).toEqual([...other]);
  });

  it('is not compiled before: that would be a fault of the program', () =>
    expect(() => compileLook(look)).toThrow(/was not read/));

  it('other looks name none', () => {
    expect(lampFileOf(checkLook({ name: 'a' }, 'a'))).toBeUndefined();
    expect(lampFileOf(checkLook({ name: 'a', projector: { lamp: 'xenon' } }, 'a'))).toBeUndefined();
    expect(lampFileOf(checkLook({ name: 'a', projector: { lamp: { kelvin: 3000 } } }, 'a'))).toBeUndefined();
  });
});
