import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../../src/errors/input-error.js';
import { sentences } from '../../../../src/errors/sentence.js';
import { commonLutFormat } from '../../../../src/lut/formats/common-lut-format/index.js';
import { sampleLut } from '../../../../src/lut/interpolate.js';
import type { CurveTable, Lut } from '../../../../src/lut/lattice.js';
import { sampleLattice } from '../../../../src/lut/lattice.js';
import { seededRandom } from '../../../../src/maths/random.js';
import { depths, encode, listOf, read, through } from './files.js';

const seed = 77;
const random = seededRandom(seed);
const noise = (run: Float64Array) => void run.forEach((_, i) => (run[i] = 3 * random() - 1));
const curves: CurveTable = {
  kind: '1d',
  size: 300,
  domainMin: [0, 0, 0],
  domainMax: [1, 1, 1],
  values: Float64Array.from({ length: 900 }, random),
};
const luts: [string, Lut][] = [
  ['2 points', sampleLattice(noise, 2)],
  ['33 points', sampleLattice(noise, 33)],
  ['a domain for each channel', sampleLattice(noise, 5, [-1, 0, 0.1], [2, 0.5, 1.1])],
  ['curves', curves],
  ['curves on a domain', { ...curves, domainMin: [-0.1, -0.1, -0.1], domainMax: [1.3, 1.3, 1.3] }],
];

/** Half of the last of six decimals. */
const sixDecimals = 0.5e-6 + 1e-12;

function complaint(text: string | Uint8Array): string {
  try {
    read(text);
  } catch (error) {
    if (error instanceof InputError) return sentences(error);
    throw error;
  }
  return 'read';
}

describe('Common LUT Format, written and read', () => {
  it.each(luts)('%s', (_, lut) => {
    const title = 'Attic & "lamp" <3200>';
    const text = commonLutFormat.write(lut, { title, comments: [['lamp', '3200 K, < 0.4 % flare']] });
    const file = read(text);
    expect(file.title).toBe(title);
    expect(file.comments).toEqual([['lamp', '3200 K, < 0.4 % flare']]);
    expect(file.notes).toEqual([]);
    expect({ ...file.lut, values: 0 }).toEqual({ ...lut, values: 0 });
    lut.values.forEach((value, i) =>
      expect(Math.abs(file.lut.values[i] - value)).toBeLessThanOrEqual(sixDecimals),
    );
    expect(commonLutFormat.write(file.lut, { title, comments: file.comments })).toBe(text);
  });

  it('nothing but the list and its nodes when plain', () => {
    const text = commonLutFormat.write(luts[0][1], { title: 'Attic', comments: [['a', 'b']], plain: true });
    expect(text).not.toMatch(/Attic|Description/);
  });

  it.each([NaN, Infinity])('does not write %d', (value) => {
    const lut: Lut = { ...luts[0][1], values: new Float64Array(24).fill(value) };
    expect(() => commonLutFormat.write(lut)).toThrow(RangeError);
  });
});

describe('process lists', () => {
  const log = `<Log ${depths} style="linToLog"><LogParams base="2" logSideSlope="0.1" logSideOffset="0.9"/></Log>`;
  const matrix = `<Matrix ${depths}><Array dim="3 3">0.8 0.1 0.1 0.1 0.8 0.1 0 0.1 0.9</Array></Matrix>`;

  it('several nodes that go channel by channel become curves', () => {
    const { lut, notes } = read(listOf(log + log));
    expect(lut.kind).toBe('1d');
    expect(notes).toEqual([
      'Its 2 process nodes are taken together on 4096 entries, over code values 0 to 1.',
    ]);
    const run = Float64Array.of(0.5, 0.7, 1);
    sampleLut(lut)(run, 1);
    through(log + log, [0.5, 0.7, 1]).forEach((value, i) => expect(run[i]).toBeCloseTo(value, 6));
  });

  it('nodes that mix channels become a lattice', () => {
    const { lut, notes } = read(listOf(matrix + log));
    expect(lut).toMatchObject({ kind: '3d', size: 33 });
    expect(notes).toHaveLength(1);
    const run = Float64Array.of(0.5, 0.25, 0.75);
    sampleLut(lut)(run, 1);
    through(matrix + log, [0.5, 0.25, 0.75]).forEach((value, i) => expect(run[i]).toBeCloseTo(value, 9));
  });

  it('comments, prefixes, CDATA and descriptions in other words are passed over', () => {
    const text = `\ufeff<?xml version='1.0'?><!-- a < b --><c:ProcessList xmlns:c="urn:AMPAS:CLF:v3.0" compCLFversion='3.0' id="a">
      <c:Description><![CDATA[lamp: a & b]]></c:Description><c:Description>any words</c:Description><c:Info><AppRelease>1</AppRelease></c:Info>
      <c:LUT1D ${depths}><c:Array dim="2 1">\r\n 0 <!-- dark -->\t1 </c:Array></c:LUT1D></c:ProcessList> `;
    const { lut, comments } = read(text);
    expect([...lut.values]).toEqual([0, 0, 0, 1, 1, 1]);
    expect(comments).toEqual([['lamp', 'a & b']]);
  });

  it('says that a trilinear table is read tetrahedrally', () => {
    const rows = '0 0 0 '.repeat(8);
    const { notes } = read(listOf(`<LUT3D ${depths}><Array dim="2 2 2 3">${rows}</Array></LUT3D>`));
    expect(notes.join()).toContain('trilinear');
  });
});

describe('refusals', () => {
  const curve = (numbers: string, dim = '2 1', more = '') =>
    listOf(`<LUT1D ${depths} ${more}><Array dim="${dim}">${numbers}</Array></LUT1D>`);

  it.each<[string, string, RegExp]>([
    ['nothing', '', /line 1: the file is empty/],
    ['other text', 'LUT_3D_SIZE 2\n', /this is no XML/],
    ['other XML', '<svg/>', /no ProcessList/],
    ['no version', '<ProcessList id="x"/>', /no compCLFversion/],
    ['version 9', listOf('', 'compCLFversion="9" id="x"'), /version "9"/],
    ['no node', listOf('<Description>a</Description>'), /no process node/],
    [
      'a misspelt node',
      listOf(`<LUT3 ${depths}/>`),
      /line 3: the node "LUT3" is not read. Did you mean "LUT3D"\?/,
    ],
    [
      'a node of another kind',
      listOf(`<Sharpen ${depths}/>`),
      /"Sharpen" is not read. Nodes that are read: LUT1D/,
    ],
    ['no bit depth', listOf('<Range/>'), /Range says no inBitDepth/],
    ['an odd bit depth', listOf('<Range inBitDepth="9i" outBitDepth="32f"/>'), /inBitDepth "9i" is none/],
    [
      'depths that do not meet',
      listOf(`<Log ${depths} style="log2"/><Range inBitDepth="8i" outBitDepth="8i"/>`),
      /Range takes 8i, but the node before it gives 32f/,
    ],
    ['too few numbers', curve('0'), /holds 1 of 2 numbers/],
    ['too many numbers', curve('0 1 2'), /more than 2 numbers/],
    ['a word', curve('0 one'), /not a finite number/],
    ['NaN', curve('0 nan'), /not a finite number/],
    ['infinity', curve('0 1e999'), /not a finite number/],
    ['a claim of size alone', curve('0 1', '65536 3'), /holds 2 of 196608/],
    ['an odd dim', curve('0 1', '2 2'), /N 1 or N 3/],
    ['a dim that is no number', curve('0 1', 'two 1'), /dim of the Array/],
    ['a half domain', curve('0 1', '2 1', 'halfDomain="true"'), /halfDomain is not read/],
    [
      'a lattice with unequal sides',
      listOf(`<LUT3D ${depths}><Array dim="2 2 3 3">0</Array></LUT3D>`),
      /N N N 3/,
    ],
    [
      'a lattice beyond the limit',
      listOf(`<LUT3D ${depths}><Array dim="999 999 999 3">0</Array></LUT3D>`),
      /2 to 256 points/,
    ],
    [
      'a table twice',
      listOf(`<LUT1D ${depths}><Array dim="2 1">0 1</Array><Array dim="2 1">0 1</Array></LUT1D>`),
      /one Array, and has 2/,
    ],
    [
      'a Range that falls',
      listOf(
        `<Range ${depths}><minInValue>1</minInValue><maxInValue>0</maxInValue><minOutValue>0</minOutValue><maxOutValue>1</maxOutValue></Range>`,
      ),
      /must rise/,
    ],
    ['half a Range', listOf(`<Range ${depths}><minInValue>1</minInValue></Range>`), /both values of an end/],
    ['a Log of no style', listOf(`<Log ${depths}/>`), /style of a Log is one of log10/],
    [
      'a Log without its break',
      listOf(`<Log ${depths} style="cameraLinToLog"><LogParams/></Log>`),
      /needs linSideBreak/,
    ],
    [
      'a Log to the base of 1',
      listOf(`<Log ${depths} style="linToLog"><LogParams base="1"/></Log>`),
      /base of a Log/,
    ],
    ['a document type', '<!DOCTYPE a [<!ENTITY b "c">]><ProcessList/>', /document type is not read/],
    ['another encoding', '<?xml version="1.0" encoding="UTF-16"?><ProcessList/>', /not in UTF-8/],
    ['a tag that does not end', '<ProcessList compCLFversion="3"', /a tag does not end/],
    [
      'an element that does not end',
      '<ProcessList compCLFversion="3">\n<Info>\n',
      /line 3: the file ends inside of Info/,
    ],
    ['tags crosswise', '<ProcessList><Info></ProcessList></Info>', /closing tag stands where none belongs/],
    ['two lists', '<ProcessList/><ProcessList/>', /something follows the end/],
    ['an attribute twice', '<ProcessList id="a" id="b"/>', /attribute id/],
    ['an unknown entity', '<ProcessList name="&bomb;"/>', /attribute name/],
    ['elements without end', `<ProcessList>${'<a>'.repeat(100)}`, /nested too deeply/],
    [
      'elements without number',
      `<ProcessList>${'<a/>'.repeat(5000)}</ProcessList>`,
      /more than 4096 elements/,
    ],
    [
      'nodes without number',
      listOf(`<Log ${depths} style="log2"/>`.repeat(65)),
      /more than 64 process nodes/,
    ],
  ])('%s', (_, text, words) => {
    expect(complaint(text)).toMatch(words);
  });

  it('random bytes, and good files with bytes changed, give nothing but an InputError', () => {
    const good = encode(
      commonLutFormat.write(luts[2][1], { title: 'Attic', comments: [['lamp', '3200 K']] }),
    );
    const put = fc.oneof(
      fc.uint8Array({ maxLength: 8 }),
      fc
        .constantFrom('<', '>', '/>', '</a>', '&', '"', '<!--', '<![CDATA[', '-', 'e9', '<?', '\0')
        .map(encode),
    );
    const change = fc.record({ at: fc.nat(good.length - 1), cut: fc.nat(40), put });
    const changed = fc
      .array(change, { minLength: 1, maxLength: 4 })
      .map((changes) =>
        changes.reduce<Uint8Array>(
          (bytes, { at, cut, put: given }) =>
            Uint8Array.from([...bytes.subarray(0, at), ...given, ...bytes.subarray(at + cut)]),
          good,
        ),
      );
    const bytes = fc.oneof(fc.uint8Array({ maxLength: 500 }), changed);
    fc.assert(
      fc.property(bytes, (given) => complaint(given) !== ''),
      { seed, numRuns: 2000 },
    );
  });
});
