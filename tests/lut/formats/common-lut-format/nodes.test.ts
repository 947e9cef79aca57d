import { describe, expect, it } from 'vitest';
import { lastCodes, logNodes } from '../../../../shared/check-values/common-lut-format.js';
import { bitDepths } from '../../../../src/lut/formats/common-lut-format/node.js';
import { depths, read, through } from './files.js';

/** Figures of a single-precision program with ten decimals. */
const singlePrecision = 1e-7;

describe('Log', () => {
  it.each(logNodes)(
    '$style meets the published figures, and its inverse undoes it',
    ({ style, inverse, parameters, rows }) => {
      const attributes = Object.entries(parameters).map(([name, value]) => `${name}="${value}"`);
      const node = (of: string) => `<Log ${depths} style="${of}"><LogParams ${attributes.join(' ')}/></Log>`;
      for (const [input, output] of rows) {
        const [got] = through(node(style), [input, input, input]);
        expect(Math.abs(got - output)).toBeLessThan(singlePrecision);
        expect(through(node(style) + node(inverse), [input, input, input])[2]).toBeCloseTo(input, 12);
      }
    },
  );

  it.each<[string, number[], number[]]>([
    ['log10', [0.01, 1, 10], [-2, 0, 1]],
    ['log2', [0.25, 1, 8], [-2, 0, 3]],
    ['antiLog10', [-2, 0, 1], [0.01, 1, 10]],
    ['antiLog2', [-1, 0, 3], [0.5, 1, 8]],
    // the least normal number of single precision stands for 0 and less
    ['log2', [0, -5, 1], [-126, -126, 0]],
  ])('%s of %j is %j', (style, input, output) => {
    through(`<Log ${depths} style="${style}"/>`, input).forEach((value, i) =>
      expect(value).toBeCloseTo(output[i], 12),
    );
  });

  it('takes parameters for each channel, others than those for all', () => {
    const node = `<Log ${depths} style="linToLog"><LogParams base="2"/><LogParams channel="G" base="10"/></Log>`;
    through(node, [8, 100, 4]).forEach((value, i) => expect(value).toBeCloseTo([3, 2, 2][i], 12));
  });
});

describe('Exponent', () => {
  const node = (style: string, parameters: string) =>
    `<Exponent ${depths} style="${style}"><ExponentParams ${parameters}/></Exponent>`;
  const square = 'exponent="2"';

  it.each<[string, number[], number[]]>([
    ['basicFwd', [-0.5, 0.5, 3], [0, 0.25, 9]],
    ['basicRev', [-0.5, 0.25, 9], [0, 0.5, 3]],
    ['basicMirrorFwd', [-0.5, 0.5, 0], [-0.25, 0.25, 0]],
    ['basicMirrorRev', [-0.25, 0.25, 0], [-0.5, 0.5, 0]],
    ['basicPassThruFwd', [-0.5, 0.5, 0], [-0.5, 0.25, 0]],
    ['basicPassThruRev', [-0.25, 0.25, 0], [-0.25, 0.5, 0]],
  ])('%s of %j is %j', (style, input, output) => {
    through(node(style, square), input).forEach((value, i) => expect(value).toBeCloseTo(output[i], 12));
  });

  it('monCurve with 2.4 and 0.055 is the curve of sRGB (IEC 61966-2-1), and its inverse undoes it', () => {
    const srgb = 'exponent="2.4" offset="0.055"';
    // 0.02 / 12.92 and ((0.5 + 0.055) / 1.055)^2.4; the straight part is 12.92 to its printed digits
    const expected = [0.02 / 12.92, ((0.5 + 0.055) / 1.055) ** 2.4, 1];
    through(node('monCurveFwd', srgb), [0.02, 0.5, 1]).forEach((value, i) =>
      expect(Math.abs(value / expected[i] - 1)).toBeLessThan(0.005 / 12.92),
    );
    for (const kind of ['monCurve', 'monCurveMirror']) {
      const both = node(`${kind}Fwd`, srgb) + node(`${kind}Rev`, srgb);
      through(both, [-0.3, 0.02, 0.7]).forEach((value, i) =>
        expect(value).toBeCloseTo([-0.3, 0.02, 0.7][i], 12),
      );
    }
  });

  it('leaves a channel as it is that is not named', () => {
    expect(through(node('basicFwd', 'channel="G" exponent="2"'), [0.5, 0.5, -1])).toEqual([0.5, 0.25, -1]);
  });

  it.each([
    ['basicUp', square, /the style of an Exponent is one of/],
    ['basicFwd', '', /exponent is no number from 0.01 to 100/],
    ['basicFwd', 'exponent="nan"', /exponent is no number/],
    ['monCurveFwd', 'exponent="0.5" offset="0.1"', /exponent is no number from 1 to 10/],
    ['monCurveFwd', 'exponent="2" offset="1"', /offset is no number from 0 to 0.9/],
  ])('is refused: %s %s', (style, parameters, words) => {
    expect(() => through(node(style, parameters), [0, 0, 0])).toThrow(words);
  });
});

describe('ASC_CDL', () => {
  const node = (style: string, saturation = 1, slope = '1 2 1') =>
    `<ASC_CDL ${depths} style="${style}"><SOPNode><Slope>${slope}</Slope><Offset>0.1 0 -0.5</Offset><Power>1 1 2</Power></SOPNode>` +
    `<SatNode><Saturation>${saturation}</Saturation></SatNode></ASC_CDL>`;

  it.each<[string, number[], number[]]>([
    ['Fwd', [0.2, 0.6, 1], [0.3, 1, 0.25]],
    ['Fwd', [-1, 0.2, 0], [0, 0.4, 0]],
    ['FwdNoClamp', [0.2, 0.6, 0], [0.3, 1.2, -0.5]],
    ['Rev', [0.3, 0.5, 0.25], [0.2, 0.25, 1]],
  ])('%s of %j is %j', (style, input, output) => {
    through(node(style), input).forEach((value, i) => expect(value).toBeCloseTo(output[i], 12));
  });

  it('saturation keeps luma, and the inverse undoes all of it', () => {
    // grey of 0.2126 r + 0.7152 g + 0.0722 b alone is left
    const grey = through(node('FwdNoClamp', 0, '1 1 1'), [0.4, 0.5, 1]);
    for (const value of grey) expect(value).toBeCloseTo(0.2126 * 0.5 + 0.7152 * 0.5 + 0.0722 * 0.25, 12);
    const both = node('FwdNoClamp', 1.3) + node('RevNoClamp', 1.3);
    through(both, [0.3, 0.4, 0.8]).forEach((value, i) => expect(value).toBeCloseTo([0.3, 0.4, 0.8][i], 12));
  });

  it.each([
    ['Up', 1, '1 1 1', /the style of an ASC_CDL is one of/],
    ['Fwd', -1, '1 1 1', /saturation .* 0 or more/],
    ['Rev', 0, '1 1 1', /no inverse/],
    ['Fwd', 1, '1 1', /Slope holds 2 of 3/],
  ])('is refused: %s, saturation %d, slope %s', (style, saturation, slope, words) => {
    expect(() => through(node(style, saturation, slope), [0, 0, 0])).toThrow(words);
  });
});

describe('Matrix', () => {
  it('rows make outputs, the last column is added', () => {
    const node = `<Matrix ${depths}><Array dim="3 4">1 2 3 0.5  0 1 0 0  0 0 1 -1</Array></Matrix>`;
    expect(through(node, [1, 10, 100])).toEqual([321.5, 10, 99]);
  });

  it('scales by the bit depths on either side', () => {
    const node =
      '<Matrix inBitDepth="8i" outBitDepth="10i"><Array dim="3 3">4 0 0 0 4 0 0 0 4</Array></Matrix>';
    expect(through(node, [1, 0.5, 0])[0]).toBeCloseTo((4 * 255) / 1023, 12);
    expect(bitDepths).toEqual(lastCodes);
  });
});

describe('Range', () => {
  const ends = (values: string, style = '') => `<Range ${depths} ${style}>${values}</Range>`;
  const all =
    '<minInValue>0.1</minInValue><maxInValue>0.9</maxInValue><minOutValue>0</minOutValue><maxOutValue>1</maxOutValue>';

  it('scales and holds, or scales alone', () => {
    const held = through(ends(all), [0, 0.5, 1]);
    const free = through(ends(all, 'style="noClamp"'), [0, 0.5, 1]);
    [0, 0.5, 1].forEach((value, i) => expect(held[i]).toBeCloseTo(value, 12));
    [-0.125, 0.5, 1.125].forEach((value, i) => expect(free[i]).toBeCloseTo(value, 12));
  });

  it('holds one end when only that is given', () => {
    expect(through(ends('<minInValue>0</minInValue><minOutValue>0</minOutValue>'), [-1, 0.5, 3])).toEqual([
      0, 0.5, 3,
    ]);
  });
});

describe('LUT3D and LUT1D', () => {
  const corner = (red: number, green: number, blue: number) => `${red} ${green} ${blue}\n`;

  it('blue runs fastest', () => {
    const rows = [0, 1].flatMap((r) => [0, 1].flatMap((g) => [0, 1].map((b) => corner(r, g, b)))).join('');
    const { lut } = read(
      `<ProcessList compCLFversion="3" id="x"><LUT3D ${depths} interpolation="tetrahedral"><Array dim="2 2 2 3">${rows}</Array></LUT3D></ProcessList>`,
    );
    expect([...lut.values.subarray(0, 9)]).toEqual([0, 0, 0, 1, 0, 0, 0, 1, 0]);
  });

  it('integer tables are divided by their last code', () => {
    const node = '<LUT1D inBitDepth="10i" outBitDepth="10i"><Array dim="2 1">0 1023</Array></LUT1D>';
    expect(through(node, [0, 0.25, 1])).toEqual([0, 0.25, 1]);
  });

  it('one column serves all channels, three serve each', () => {
    expect(through(`<LUT1D ${depths}><Array dim="2 3">0 0 0 1 2 3</Array></LUT1D>`, [0.5, 0.5, 0.5])).toEqual(
      [0.5, 1, 1.5],
    );
  });
});
