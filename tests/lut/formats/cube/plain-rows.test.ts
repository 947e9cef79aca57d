import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../../src/errors/input-error.js';
import { createCubeReader, readCube } from '../../../../src/lut/formats/cube/read.js';

const encode = (text: string) => new TextEncoder().encode(text);

/** A 1D file of rows, which may be as long as one likes. */
const fileOf = (rows: readonly string[], lineEnd = '\n') =>
  ['LUT_1D_SIZE ' + rows.length, ...rows].join(lineEnd);

/** Numbers as programs write them, from the usual ones to those that ask for a second look. */
const double = fc.double({ noNaN: true, noDefaultInfinity: true });
const share = fc.double({ min: -0.1, max: 1.2, noNaN: true });
const usual = fc.tuple(share, fc.integer({ min: 0, max: 20 })).map(([value, n]) => value.toFixed(n));
const word = fc.oneof(
  { weight: 6, arbitrary: usual },
  { weight: 1, arbitrary: share.map(String) },
  { weight: 1, arbitrary: double.map(String) },
  { weight: 1, arbitrary: double.map((value) => value.toPrecision(17)) },
  { weight: 1, arbitrary: double.map((value) => value.toExponential(6)) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      ...[
        '0',
        '-0',
        '-0.000000',
        '.5',
        '5.',
        '-.25',
        '+1',
        '007.50',
        '1e-5',
        '4.9e-324',
        '2.2250738585072011e-308',
      ],
      // Halfway between two doubles, and a digit beside it.
      ...['9007199254740993', '9007199254740993.0000001', '0.1000000000000000124900090270330610871315'],
      ...['123456789012345', '1234567890123456', '0.123456789012345', '0.00000000000000000000000000000012'],
    ),
  },
);
const row = fc
  .tuple(word, word, word, fc.constantFrom(' ', '  ', '\t'))
  .map(([r, g, b, gap]) => [r, g, b].join(gap));
const rows = fc.array(row, { minLength: 2, maxLength: 40 });

describe('rows of a .cube file', () => {
  it.each([
    ['LF', '\n', '\n'],
    ['CR LF', '\r\n', '\r\n'],
    ['LF, none at the end', '\n', ''],
    ['CR', '\r', '\r'],
  ])('are what Number gives, to the last bit, with %s', (_, lineEnd, last) => {
    const equal = fc.property(rows, (lines) => {
      const { lut } = readCube(encode(fileOf(lines, lineEnd) + last), 'reel.cube');
      expect([...lut.values]).toEqual(lines.flatMap((line) => line.split(/[ \t]+/).map(Number)));
    });
    fc.assert(equal, { seed: 4, numRuns: 1000 });
  });

  it('are the same wherever the bytes are cut', () => {
    const lines = ['0.1 0.2 0.3', '-0.000001 1 2', '1e-3 0.5 0.25', '0.123456 0.654321 1.000000', '5 6 7'];
    for (const lineEnd of ['\n', '\r\n', '\r']) {
      const bytes = encode(fileOf(lines, lineEnd) + lineEnd);
      const whole = readCube(bytes, 'reel.cube');
      for (let first = 1; first < bytes.length; first++)
        for (let second = first; second < bytes.length; second += 5) {
          const reader = createCubeReader('reel.cube');
          for (const [from, to] of [
            [0, first],
            [first, second],
            [second, bytes.length],
          ])
            // prettier-ignore
            reader.write(bytes.subarray(from, to));
          expect(reader.end()).toEqual(whole);
        }
    }
  });

  const faults = {
    'a fourth number': '1 2 3 4',
    'two numbers': '1 2',
    'a comma': '0,1 2 3',
    'no number': '1 2 x',
    'two points': '1..2 3 4',
    'a point alone': '. 1 2',
    'a minus alone': '- 1 2',
    'a sign within': '1-2 3 4',
    'nothing finite': '1 nan 3',
    'a control character': '1 2 3\u0001',
  };
  it.each(Object.entries(faults))('name the line of %s among thousands', (_, fault) => {
    const lines = Array.from({ length: 5000 }, (_, i) => `0.${i} 0.5 0.25`);
    lines[4321] = fault;
    for (const lineEnd of ['\n', '\r\n', '\r']) {
      const read = () => readCube(encode(fileOf(lines, lineEnd)), 'reel.cube');
      expect(read).toThrow(InputError);
      try {
        read();
      } catch (error) {
        expect((error as InputError).problems[0].line).toBe(4323);
      }
    }
  });

  it('are counted: one too many is named, and a missing one', () => {
    const lines = Array.from({ length: 3000 }, () => '0.1 0.2 0.3');
    const counted = (count: number) => () => readCube(encode(fileOf(lines).replace('3000', `${count}`)), 'x');
    expect(counted(2999)).toThrow(
      expect.objectContaining({ problems: [expect.objectContaining({ line: 3001 })] }),
    );
    expect(counted(3001)).toThrow(
      expect.objectContaining({ problems: [expect.objectContaining({ line: 3001 })] }),
    );
  });

  it('may be as long as a line may be, and no longer', () => {
    const long = (digits: number) => `0.${'0'.repeat(digits)} 1 2`;
    const notes = (line: string) =>
      readCube(encode(`${fileOf(['0 0 0', '1 1 1', line])}\n`), 'x').notes.length;
    expect(notes(`1 1 1${' '.repeat(245)}`)).toBe(0);
    expect(notes(`1${' '.repeat(246)}1 1`)).toBe(0);
    expect(notes(long(244))).toBe(0);
    expect(() => notes(`1${' '.repeat(247)}1 1`)).toThrow(InputError);
  });
});
