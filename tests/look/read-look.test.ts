import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sentences } from '../../src/errors/sentence.js';
import { checkLook, readLook } from '../../src/look/read-look.js';

function words(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return sentences(error);
    throw error;
  }
  return 'nothing is wrong';
}

/** What is said of a look of this name and these fields. */
const said = (fields: object) => words(() => checkLook({ name: 'quay', ...fields }, 'quay.json'));
const read = (text: string) => words(() => readLook(text, 'quay.json'));

const sections = 'name, note, camera, stock, print, projector, room, rolloff, delivery';
const encodings =
  'linear, srgb, bt709, bt1886, gamma-2.2, gamma-2.4, gamma-2.6, hlg, pq, acescct, printing-density-log; or an object of base, logSideSlope, logSideOffset, linSideSlope, linSideOffset, linSideBreak, linearSlope';
const lamps =
  'incandescent, incandescent-high-wattage, incandescent-dim, tungsten-halogen, tungsten-halogen-low, xenon, illuminant-a, d65; or an object of kelvin; or an object of spectrum; or an object of file';
const bt709 = { red: [0.64, 0.33], green: [0.3, 0.6], blue: [0.15, 0.06], white: [0.3127, 0.329] };
const spectrum = (values: unknown[]) => ({ lamp: { spectrum: { startNm: 380, stepNm: 5, values } } });

describe('a look', () => {
  it('that says next to nothing has everything filled in', () =>
    expect(readLook('{"name":"quay"}', 'quay.json')).toEqual({
      name: 'quay',
      note: '',
      camera: { encoding: 'srgb', primaries: 'bt709', range: 'full' },
      delivery: { gamutCompression: true },
    }));

  it('keeps what it says', () => {
    const look = readLook(
      '\uFEFF{"name":"quay","stock":{"loss":{"cyan":0.3}},"note":"of \\u0041"}',
      'quay.json',
    );
    expect(look.stock).toEqual({
      dyes: 'reversal-late',
      loss: { cyan: 0.3, magenta: 0, yellow: 0 },
      stain: { red: 0, green: 0, blue: 0 },
    });
    expect(look.note).toBe('of A');
  });
});

describe('JSON that is none', () => {
  const comma = 'Look for a missing or extra comma, a quote left open, or a comment.';
  const end = 'Is a bracket or a quote missing at the end?';

  it.each([
    ['', 'quay.json: is empty. A look file is JSON; see looks/ for examples.'],
    [' \n\uFEFF', 'quay.json: is empty. A look file is JSON; see looks/ for examples.'],
    ['{"name":"quay",}', `quay.json, line 1: this is not JSON. ${comma}`],
    ['{\n  "name": "quay"\n  "note": "x"\n}', `quay.json, line 3: this is not JSON. ${comma}`],
    ['{\n  // the pier\n  "name": "quay"\n}', `quay.json, line 2: this is not JSON. ${comma}`],
    ['{\n  "name": "quay,\n  "note": ""\n}', `quay.json, line 2: this is not JSON. ${comma}`],
    ['{\r\n"name":\r\nquay}', `quay.json, line 3: this is not JSON. ${comma}`],
    ['{"name":"quay"}\nand more', `quay.json, line 2: this is not JSON. ${comma}`],
    ['{"name":x}', `quay.json, line 1: this is not JSON. ${comma}`],
    ['\uFEFF{"name":x}', `quay.json, line 1: this is not JSON. ${comma}`],
    ['{\n"name": "quay"\n', `quay.json, line 3: the JSON ends too early. ${end}`],
    ['{"name":"qu', `quay.json, line 1: the JSON ends too early. ${end}`],
  ])('%j', (text, expected) => expect(read(text)).toBe(expected));
});

describe('a field that is there twice', () => {
  const hint = 'Leave one of the two, or put what both say into one.';

  it.each([
    ['{"name":"a","name":"b"}', 'line 1: "name" is there twice, first in line 1'],
    [
      '\uFEFF{"name": "a",\n"stock": {},\n\n"room": {"a": "\\"stock"},\n"stock": {}}',
      'line 5: "stock" is there twice, first in line 2',
    ],
    [
      '{"stock":{"loss":{"cyan":0.1,\n"magenta":0,\n"c\\u0079an" : 0.2}}}',
      'line 3: "cyan" is there twice, first in line 1',
    ],
    ['[{"a":1},{"__proto__":1,"__proto__":2}]', 'line 1: "__proto__" is there twice, first in line 1'],
  ])('%j', (text, what) => expect(read(text)).toBe(`quay.json, ${what}. ${hint}`));

  it('is no fault of names in several objects, or of texts', () =>
    expect(
      read(
        '{"name":"note","note":"{\\"note\\": 1, \\"note\\": 2}","print":{"printerPoints":{"red":1}},"stock":{"stain":{"red":0}}}',
      ),
    ).toBe('nothing is wrong'));
});

describe('a value that is no look', () => {
  it.each([
    ['null', `null is not allowed`],
    ['[]', `an empty list is not allowed`],
    ['[1, 2]', `a list of 2 is not allowed`],
    ['3', `3 is not allowed`],
    ['"quay"', `"quay" is not allowed`],
    ['true', `true is not allowed`],
  ])('%s', (text, what) => expect(read(text)).toBe(`quay.json: ${what}. Allowed: an object of ${sections}.`));

  it('and values that no JSON has', () => {
    for (const value of [undefined, NaN, 3n, Symbol('x'), () => 1, new Map()])
      expect(words(() => checkLook(value, 'quay.json'))).toMatch(
        /^quay\.json(, name)?: .*(not allowed|is missing)/,
      );
    const round: Record<string, unknown> = {};
    round.name = round;
    expect(words(() => checkLook(round, 'quay.json'))).toBe(
      'quay.json, name: an object is not allowed. Allowed: a text of 1 to 200 characters in double quotes.',
    );
  });
});

describe('fields that are not there, or should not be', () => {
  it.each([
    [
      () => words(() => checkLook({}, 'quay.json')),
      'quay.json, name: is missing. Allowed: a text of 1 to 200 characters in double quotes.',
    ],
    [
      () => said({ stok: {} }),
      `quay.json, stok: there is no field "stok". Allowed: ${sections}. Did you mean "stock"?`,
    ],
    [() => said({ wedge: 1 }), `quay.json, wedge: there is no field "wedge". Allowed: ${sections}.`],
    [
      () => said({ stock: { loss: { mgenta: 0.1 } } }),
      'quay.json, stock.loss.mgenta: there is no field "mgenta". Allowed: cyan, magenta, yellow. Did you mean "magenta"?',
    ],
    [
      () => said({ projector: { lamp: { kelvn: 3200 } } }),
      'quay.json, projector.lamp.kelvin: is missing. Allowed: a number from 1500 to 25000.\n' +
        'quay.json, projector.lamp.kelvn: there is no field "kelvn". Allowed: kelvin, spectrum, file. Did you mean "kelvin"?',
    ],
    [
      () => said({ projector: { lamp: { kelvin: 3200, file: 'lamp.csv' } } }),
      'quay.json, projector.lamp.file: does not go with the field beside it. Allowed: one of kelvin, spectrum, file.',
    ],
    [
      () => said({ camera: { encoding: { bse: 10 } } }),
      'quay.json, camera.encoding.bse: there is no field "bse". Allowed: base, logSideSlope, logSideOffset, linSideSlope, linSideOffset, linSideBreak, linearSlope. Did you mean "base"?',
    ],
    [
      () => said({ camera: { primaries: { ...bt709, blue: undefined } } }),
      'quay.json, camera.primaries.blue: is missing. Allowed: a list of 2 numbers.',
    ],
  ])('case %#', (act, expected) => expect(act()).toBe(expected));

  it('are named in quotes, on one line, when the name is none of ours', () => {
    expect(said({ 'a\nb\u001b[31m': 1 })).toBe(
      `quay.json, "a\\nb\\u001b[31m": there is no field "a\\nb\\u001b[31m". Allowed: ${sections}.`,
    );
    expect(said({ ['x'.repeat(5000)]: 1 }).length).toBeLessThan(300);
  });
});

describe('values that are not allowed', () => {
  it.each([
    [{ name: '' }, 'name: "" is not allowed. Allowed: a text of 1 to 200 characters in double quotes.'],
    [{ note: 5 }, 'note: 5 is not allowed. Allowed: a text of up to 4000 characters in double quotes.'],
    [{ stock: null }, 'stock: null is not allowed. Allowed: an object of dyes, loss, stain.'],
    [
      { stock: { dyes: 'reversal-lat' } },
      'stock.dyes: "reversal-lat" is not allowed. Allowed: reversal-early, reversal-late, print. Did you mean "reversal-late"?',
    ],
    [
      { stock: { loss: { cyan: 0.95 } } },
      'stock.loss.cyan: 0.95 is not allowed. Allowed: a number from 0 to 0.9.',
    ],
    [
      { stock: { loss: { cyan: '0.3' } } },
      'stock.loss.cyan: "0.3" is not allowed. Allowed: a number from 0 to 0.9.',
    ],
    [
      { stock: { stain: [0, 0, 0] } },
      'stock.stain: a list of 3 is not allowed. Allowed: an object of red, green, blue.',
    ],
    [
      { print: { contrast: Infinity } },
      'print.contrast: Infinity is not allowed. Allowed: a number from 0.2 to 3.',
    ],
    [{ print: { contrast: NaN } }, 'print.contrast: NaN is not allowed. Allowed: a number from 0.2 to 3.'],
    [
      { print: { printerPoints: { red: -51 } } },
      'print.printerPoints.red: -51 is not allowed. Allowed: a number from -50 to 50.',
    ],
    [
      { projector: { lamp: 'tungsten-hallogen' } },
      `projector.lamp: "tungsten-hallogen" is not allowed. Allowed: ${lamps}. Did you mean "tungsten-halogen"?`,
    ],
    [{ projector: { lamp: 3200 } }, `projector.lamp: 3200 is not allowed. Allowed: ${lamps}.`],
    [
      { projector: { lamp: { kelvin: 900 } } },
      'projector.lamp.kelvin: 900 is not allowed. Allowed: a number from 1500 to 25000.',
    ],
    [
      { projector: { heatFilter: 'yes' } },
      'projector.heatFilter: "yes" is not allowed. Allowed: true or false.',
    ],
    [
      { projector: spectrum([1, 'a', ...Array<number>(70).fill(1)]) },
      'projector.lamp.spectrum.values[1]: "a" is not allowed. Allowed: a number from 0 to 1000000000000.',
    ],
    [
      { projector: spectrum(Array<number>(30).fill(1)) },
      'projector.lamp.spectrum.values: end at 525 nm; a lamp must be known from 400 to 700 nm.',
    ],
    [
      { projector: spectrum(Array<number>(81).fill(0)) },
      'projector.lamp.spectrum.values: lack red, green or blue light.',
    ],
    [
      { projector: spectrum(Array.from({ length: 81 }, (_, i) => (i === 42 ? 1 : 0))) },
      'projector.lamp.spectrum.values: lack red, green or blue light.',
    ],
    [
      { room: { surround: 'darkk' } },
      'room.surround: "darkk" is not allowed. Allowed: average, dim, dark. Did you mean "dark"?',
    ],
    [
      { camera: { range: 'Legal' } },
      'camera.range: "Legal" is not allowed. Allowed: full, legal. Did you mean "legal"?',
    ],
    [
      { camera: { encoding: 'sgrb' } },
      `camera.encoding: "sgrb" is not allowed. Allowed: ${encodings}. Did you mean "srgb"?`,
    ],
    [
      { camera: { encoding: { base: 10, linSideBreak: -1 } } },
      'camera.encoding.linSideBreak: the logarithm does not reach down to the break. Allowed: a higher break.',
    ],
    [
      { camera: { encoding: { linearSlope: 2 } } },
      'camera.encoding.linearSlope: a line without a break has no use. Allowed: linSideBreak beside it.',
    ],
    [
      { camera: { primaries: { ...bt709, white: [0.6, 0.6] } } },
      'camera.primaries.white: the white lies outside its primaries. Allowed: x y between red, green and blue.',
    ],
    [
      { camera: { primaries: { ...bt709, red: bt709.green, green: bt709.red } } },
      'camera.primaries.red: red, green and blue span no triangle. Allowed: x y of CIE 1931, in this order.',
    ],
    [
      { camera: { primaries: { ...bt709, red: [0.64] } } },
      'camera.primaries.red: a list of 1 is not allowed. Allowed: a list of 2 numbers.',
    ],
    [
      { rolloff: { shoulderStart: 1 } },
      'rolloff.shoulderStart: 1 is not allowed. Allowed: a number from 0 to 0.98.',
    ],
    [
      { delivery: { gamutCompression: 1 } },
      'delivery.gamutCompression: 1 is not allowed. Allowed: true or false.',
    ],
  ])('%j', (fields, expected) => expect(said(fields)).toBe(`quay.json, ${expected}`));

  it('are all named, not only the first', () =>
    expect(
      said({ stock: { loss: { cyan: 2, magenta: -1 } }, stok: 1, print: { contrast: 'x' } }).split('\n'),
    ).toHaveLength(4));

  it('are shown cut when they are long', () =>
    expect(said({ name: 'a'.repeat(300) })).toBe(
      `quay.json, name: "${'a'.repeat(53)}..." is not allowed. Allowed: a text of 1 to 200 characters in double quotes.`,
    ));
});
