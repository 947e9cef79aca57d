import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { fromFull } from '../../src/colour/signal-range.js';
import { ciede2000Run, labRun } from '../../src/colour/difference.js';
import { demoAges, renderDemoStill, type DemoAgeName, type DemoStillName } from '../../src/demo/index.js';
import { applyLook } from '../../src/jobs/apply-look.js';
import { checkTable, isGood } from '../../src/jobs/check-lut.js';
import { measuredStills } from '../../src/jobs/measured-stills.js';
import { correctionOf, measureReelToLook, type MeasuredReel } from '../../src/jobs/measure-reel.js';
import { headline, lossWords, reelLines } from '../../src/jobs/reel-words.js';
import type { Still } from '../../src/measure/index.js';
import { reportReel } from '../../src/jobs/report-reel.js';
import { screenSignal, signalsOf, signalToXyz } from '../../src/jobs/signal.js';
import { compileLook } from '../../src/look/compile-look.js';
import { readLook } from '../../src/look/read-look.js';
import { cameraSchema } from '../../src/look/sections/camera.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import { lastCode, makePicture, type Picture } from '../../src/picture/picture.js';
import { fonts } from '../preview/fonts.js';

const size = { width: 240, height: 180 };

/** Drawn and measured once: both take a while. */
function once<Key extends string, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const made = new Map<Key, Value>();
  return (key) => {
    if (!made.has(key)) made.set(key, make(key));
    return made.get(key)!;
  };
}
const drawn = once((key: `${DemoStillName} ${DemoAgeName}`) => {
  const [name, age] = key.split(' ') as [DemoStillName, DemoAgeName];
  return renderDemoStill(name, { ...size, age });
});
const still = (name: DemoStillName, age: DemoAgeName) => ({
  name: `${name}.png`,
  picture: drawn(`${name} ${age}`),
});
const reelOf = (age: DemoAgeName) => [still('regatta', age), still('tram', age)];
const measured = once((age: DemoAgeName) =>
  measureReelToLook({ stills: reelOf(age), marks: {}, dyes: 'auto' }),
);

function labOf(picture: Picture): Float64Array {
  const values = Float64Array.from(picture.data, (code) => code / lastCode(picture.bits));
  signalToXyz(screenSignal)(values, values.length / 3);
  labRun(values, values.length / 3, [0.95047, 1, 1.08883]);
  return values;
}

/** Mean CIEDE2000 between two stills. */
function meanDifference(a: Picture, b: Picture): number {
  const [labA, labB] = [labOf(a), labOf(b)];
  const out = new Float64Array(labA.length / 3);
  ciede2000Run(labA, labB, out.length, out);
  return out.reduce((sum, value) => sum + value, 0) / out.length;
}

const corrected = (reel: MeasuredReel, picture: Picture) =>
  applyLook(sampleLattice(compileLook(correctionOf(reel)), 33), picture);

describe('measureReelToLook', () => {
  const halvesTheDifference = (age: DemoAgeName) => {
    for (const name of ['regatta', 'tram'] as const) {
      const sound = still(name, 'in-good-order').picture;
      const faded = still(name, age).picture;
      const [before, after] = [
        meanDifference(faded, sound),
        meanDifference(corrected(measured(age), faded), sound),
      ];
      expect(after, `${name}: ${before} before`).toBeLessThan(0.5 * before);
    }
  };

  it('brings a pink reel at least half way back', () => halvesTheDifference('pink'));

  it('brings a blue-shifted reel at least half way back', () => halvesTheDifference('blue-shifted'));

  it('calls it thin evidence where stills of two reels are given as one', () => {
    const { measurement, look } = measureReelToLook({
      stills: [still('regatta', 'blue-shifted'), still('tram', 'pink')],
      marks: {},
      dyes: 'auto',
    });
    const { confidence } = measurement;
    expect(confidence.word).toBe('thin');
    expect(confidence.reasons.join()).toContain(
      'regatta.png and tram.png speak against one another, as stills of different reels would',
    );
    expect(confidence.divided).toBe(true);
    const [first] = reelLines(measurement, 'auto');
    expect(first).toMatch(/^These stills speak against one another/);
    expect(look.note).toContain(first);
  });

  it.each(['pink', 'blue-shifted'] as const)('names the dye that a %s reel lost most of', (age) => {
    const mostLost = (loss: object) => Object.entries(loss).sort(([, a], [, b]) => b - a)[0][0];
    expect(mostLost(measured(age).measurement.loss)).toBe(mostLost(demoAges[age].loss));
  });

  it.each(Object.keys(demoAges) as DemoAgeName[])(
    'makes a correction of a reel %s that is good to load: what it cuts lies above the open gate',
    (age) => {
      const { look } = measured(age);
      const table = sampleLattice(compileLook(look), 33);
      const faults = checkTable(table, signalsOf(look), look).filter((finding) => !isGood([finding]));
      expect(faults.map(({ sentence }) => sentence)).toEqual([]);
    },
  );

  it('leaves a reel in good order alone', () => {
    const reel = measured('in-good-order');
    expect(reel.look.stock!.loss).toEqual({ cyan: 0, magenta: 0, yellow: 0 });
    expect(reel.look.camera.flare).toBeUndefined();
    expect(reel.look.rolloff).toBeUndefined();
    const { picture } = still('tram', 'in-good-order');
    expect(meanDifference(corrected(reel, picture), picture)).toBeLessThan(1);
    expect(headline(reel.measurement)).toMatch(/good order/);
  });

  it.each(['pink', 'blue-shifted'] as const)(
    'neither burns out the bare light of a reel %s nor blocks its blacks',
    (age) => {
      const { look } = measured(age);
      const { encode } = transferFunctions.srgb;
      const codesOf = (light: number) => encode(light * look.camera.openGate!);
      // the bare light by itself and before a white balance that is 5 % off; no light but the scan's own stray light
      const bare = [codesOf(1), codesOf(1.05), codesOf(0.95)];
      const black = Array<number>(3).fill(codesOf(look.camera.flare!));
      const out = Float64Array.from([...bare, ...black]);
      compileLook(look)(out, 2);
      const halfACode = 0.5 / 255;
      for (const code of out) {
        expect(code).toBeGreaterThan(halfACode);
        expect(code).toBeLessThan(1 - halfACode);
      }
    },
  );

  it('writes a look file that reads back as what was measured, a correction alone', () => {
    const { text, look, measurement } = measured('pink');
    expect(readLook(text, 'a.json')).toEqual(look);
    expect(text).toMatch(/^\{\n {2}"name": "Correction, measured from regatta.png and 1 more",\n/);
    expect(text.endsWith('}\n')).toBe(true);
    expect(Object.keys(JSON.parse(text) as object)).toEqual(['name', 'note', 'camera', 'stock', 'rolloff']);
    expect(look.stock!.loss.cyan).toBeCloseTo(measurement.loss.cyan, 4);
    expect(look.stock!.dyes).toBe(measurement.dyes);
    expect(look.camera.openGate).toBeCloseTo(measurement.openGate, 3);
    expect(look.camera.flare).toBe(measurement.flare);
    expect(look.note).toMatch(/Measured from regatta\.png, tram\.png: cyan \d+ %/);
  });

  it.each(['pink', 'in-good-order'] as const)(
    'reports the correction of a reel %s as it is written without a look to be like',
    (age) => {
      const reel = measured(age);
      const fields = { name: 'Lamp', projector: { lamp: 'xenon' }, rolloff: { toe: 0.2 } };
      const like = { look: readLook(JSON.stringify(fields), 'like.json'), fields };
      const alike = measureReelToLook({ stills: reelOf(age), marks: {}, dyes: 'auto', like });
      for (const { name, note, ...alone } of [correctionOf(reel), correctionOf(alike)])
        expect({ ...alone, name: reel.look.name, note: reel.look.note }, name + note).toEqual(reel.look);
    },
  );

  it('keeps what a look to be like says, word for word, and fills in the rest', () => {
    const fields = {
      name: 'Club evening',
      note: 'For the annual meeting. Measured from the projector itself: never for prints.',
      rolloff: { shoulderSoftness: 0.3 },
      projector: { lamp: 'tungsten-halogen', flare: 0.004 },
      stock: { dyes: 'print', loss: { cyan: 0.8 } },
      camera: { range: 'full' },
    };
    const like = { look: readLook(JSON.stringify(fields), 'like.json'), fields };
    const { text } = measureReelToLook({ stills: reelOf('pink'), marks: {}, dyes: 'reversal-early', like });
    const written = JSON.parse(text) as typeof fields & { camera: { openGate: number } };
    expect(written.name).toBe('Club evening, measured from regatta.png and 1 more');
    expect(written.note).toMatch(/^Measured from regatta\.png, tram\.png: cyan/);
    expect(written.note.endsWith(`The look it was made like says: ${fields.note}`)).toBe(true);
    expect(written.note).not.toMatch(/correction alone/);
    expect(written.projector).toEqual(fields.projector);
    expect(written.rolloff).toEqual(fields.rolloff);
    expect(written.stock.dyes).toBe('reversal-early');
    expect(written.stock.loss.cyan).toBeLessThan(0.7);
    expect(Object.keys(written.camera)).toEqual(['range', 'openGate', 'flare']);
  });

  it('puts a new measurement in the place of an older one, in name and note', () => {
    const likeAgain = (text: string, stills: Still[]) =>
      measureReelToLook({
        stills,
        marks: {},
        dyes: 'reversal-early',
        like: { look: readLook(text, 'like.json'), fields: JSON.parse(text) as Record<string, unknown> },
      });
    const own = '{"name":"Club evening","note":"Ours. Measured from a: b.","rolloff":{"toe":0.2}}';
    for (const first of [own, '{"name":"Bare"}', '{"name":"Bare","note":"Mine."}']) {
      const once = likeAgain(first, reelOf('pink'));
      const twice = likeAgain(once.text, reelOf('pink').toReversed());
      const named = (text: string) => text.replace('tram.png, regatta.png', 'regatta.png, tram.png');
      expect(twice.look.name).toBe(once.look.name.replace('regatta', 'tram'));
      expect(named(twice.look.note).replace(/\d+/g, '')).toBe(once.look.note.replace(/\d+/g, ''));
      expect(/correction alone/.test(twice.look.note)).toBe(first !== own);
    }
  });

  it('says of a reel that is left as it is neither that dyes are given back nor that nothing else is done', () => {
    expect(measured('in-good-order').look.note).not.toMatch(/gives back/);
  });

  it('keeps to the longest name that a look may have', () => {
    const look = readLook(JSON.stringify({ name: 'n'.repeat(200) }), 'like.json');
    const [first] = reelOf('pink');
    const long = { ...first, name: `${'s'.repeat(150)}.png` };
    const like = { look, fields: { name: look.name } };
    const made = measureReelToLook({ stills: [long], marks: {}, dyes: 'reversal-early', like });
    expect(made.look.name).toHaveLength(200);
    expect(made.look.name).toMatch(/^n+, measured from s+\.{3}s+\.png$/);
  });

  it('takes the open gate as given', () => {
    const reel = measureReelToLook({ stills: reelOf('pink'), marks: {}, dyes: 'auto', openGate: 0.95 });
    expect(reel.look.camera.openGate).toBe(0.95);
    expect(reelLines(reel.measurement, 'auto').join('\n')).toMatch(
      /open gate +0\.950 of linear light, as given/,
    );
  });
});

describe('what cannot be', () => {
  it('an open gate darker than the picture is told and not used', () => {
    const { measurement } = measureReelToLook({
      stills: reelOf('pink'),
      marks: {},
      dyes: 'reversal-late',
      openGate: 0.1,
    });
    expect(measurement.confidence.reasons[0]).toMatch(/^the open gate as given is darker than/);
    expect(measurement.openGateFrom).toBe('brightest parts');
  });

  it('an encoding that would make the light brighter than any look can name is refused in words of the stills', () => {
    const stills = reelOf('pink');
    expect(() =>
      measureReelToLook({ stills, marks: {}, dyes: 'reversal-late', written: { encoding: 'acescct' } }),
    ).toThrow(/the light without film would lie at 1\d\d times diffuse white/);
  });
});

describe('stills of other cameras', () => {
  const camera = cameraSchema.parse({ encoding: 'acescct', range: 'legal', primaries: 'bt2020' });

  it('are handed on as they are where they can be read as they are', () => {
    const pictures = reelOf('pink').map(({ picture }) => picture);
    const plain = measuredStills(pictures, cameraSchema.parse({ encoding: 'bt709' }));
    expect(plain).toEqual({ pictures, encoding: 'bt709', scale: 1 });
    expect(plain.pictures[0]).toBe(pictures[0]);
  });

  it('become light in proportion: a grey of so much light stays so much, burnt out stays burnt out', () => {
    const { encode, decode } = transferFunctions.acescct;
    const lights = [0.001, 0.02, 0.18, 0.9];
    const codes = [...lights.map((light) => fromFull(encode(light), 'legal')), 0.95];
    const source = makePicture(
      5,
      1,
      { channels: 1, bits: 16 },
      Uint16Array.from(codes, (code) => Math.round(65535 * code)),
    );
    const { pictures, encoding, scale } = measuredStills([source], camera);
    expect(scale).toBeCloseTo(decode(1), 9);
    const read = [...Array(5).keys()].map((i) =>
      transferFunctions[encoding].decode(pictures[0].data[3 * i + 1] / 65535),
    );
    lights.slice(2).forEach((light, i) => expect((read[2 + i] * scale) / light).toBeCloseTo(1, 1));
    expect(pictures[0].data[3 * 4]).toBe(65535);
  });

  it('measure as the same film written plainly does', () => {
    // The same light, written by a curve that needs converting: legal range instead of full.
    const legal = (picture: Picture): Picture => ({
      ...picture,
      bits: 16,
      data: Uint16Array.from(picture.data, (code) => Math.round(65535 * fromFull(code / 255, 'legal'))),
    });
    const fields = { name: 'x', camera: { range: 'legal' } };
    const like = { look: readLook(JSON.stringify(fields), 'x'), fields };
    const stills = reelOf('pink').map(({ name, picture }) => ({ name, picture: legal(picture) }));
    const [a, b] = [measureReelToLook({ stills, marks: {}, dyes: 'auto', like }), measured('pink')];
    // Only the rounding to other codes lies between the two.
    expect(a.measurement.loss.cyan).toBeCloseTo(b.measurement.loss.cyan, 2);
    expect(a.measurement.openGate).toBeCloseTo(b.measurement.openGate, 2);
  });
});

describe('words and picture', () => {
  it('say a loss with what it may be', () => {
    expect(lossWords(0.53, 0.07)).toBe('53 % lost (46 to 60)');
    expect(lossWords(0.02, 0.07)).toBe('2 % lost (0 to 9)');
    expect(lossWords(0, 0.01)).toBe('no loss found (0 to 1 %)');
  });

  it('say how thin the evidence of one still of a single colour is, and refuse one without colour', () => {
    const even = (...rgb: number[]) => ({
      name: 'fog.png',
      picture: makePicture(
        64,
        48,
        { channels: 3, bits: 8 },
        Uint8Array.from({ length: 64 * 48 * 3 }, (_, i) => rgb[i % 3]),
      ),
    });
    const measured = (still: Still) =>
      measureReelToLook({ stills: [still], marks: {}, dyes: 'auto' }).measurement;
    expect(reelLines(measured(even(120, 121, 120)), 'auto').join('\n')).toMatch(/THIN/);
    expect(() => measured(even(120, 120, 120))).toThrow(InputError);
  });

  it.each(['pink', 'blue-shifted', 'in-good-order'] as const)(
    'say why the evidence of a reel %s is no better than fair, where the figure alone is why',
    (age) => {
      const { measurement } = measured(age);
      const { word, expected, reasons } = measurement.confidence;
      const lines = reelLines(measurement, 'auto').join('\n');
      expect(word).toBe(expected > 2.5 ? 'fair' : 'good');
      expect(reasons).toHaveLength(expected > 2.5 ? 1 : 0);
      if (word === 'fair')
        expect(lines).toContain(
          `What is seen fits sound pictures of rather different colours, on average ${expected.toFixed(1)} from`,
        );
      expect(word === 'good').toBe(age === 'in-good-order');
    },
  );

  it('tell which stills of a reel say nothing, and measure the others as if they were alone', () => {
    const filled = (name: string, code: number) => ({
      name,
      picture: makePicture(64, 48, { channels: 3, bits: 8 }, new Uint8Array(3 * 64 * 48).fill(code)),
    });
    const burnt = filled('burnt.png', 255);
    burnt.picture.data[0] = 254;
    const [regatta, tram] = reelOf('pink');
    const stills = [filled('title.png', 90), regatta, burnt, tram];
    const black = [{ still: 4, x: 232, y: 162, width: 8, height: 15 }];
    const reel = measureReelToLook({ stills, marks: { black }, dyes: 'reversal-late' });
    const alone = measureReelToLook({
      stills: [regatta, tram],
      marks: { black: [{ ...black[0], still: 2 }] },
      dyes: 'reversal-late',
    });
    expect(reel.unused.map(({ index, name, why }) => `${index} ${name} ${why}`)).toEqual([
      '0 title.png has no colour, so it tells nothing of dyes',
      '2 burnt.png is burnt out or blocked in every part, so nothing can be read from it',
    ]);
    expect(reel.text).toBe(alone.text);
    const blocked = { ...tram, picture: { ...tram.picture, data: tram.picture.data.slice() } };
    for (let y = 160; y < 180; y++) blocked.picture.data.fill(255, 3 * 240 * y, 3 * 240 * (y + 1));
    const unread = measureReelToLook({
      stills: [stills[0], regatta, burnt, blocked],
      marks: { neutral: black },
      dyes: 'reversal-late',
    });
    expect(unread.measurement.confidence.reasons).toContain(
      'the neutral rectangle 232,162,8,15 in tram.png is burnt out or blocked and was not used',
    );
    const report = reportReel(reel, stills, fonts);
    expect(report.height).toBeGreaterThan(reportReel(alone, [regatta, tram], fonts).height - 1);
  });

  it('draw a report that names the stray light which the look takes off', () => {
    const reel = measured('pink');
    const unnamed = { ...reel, measurement: { ...reel.measurement, flare: 0 } };
    const [named, less] = [reel, unnamed].map((of) => reportReel(of, reelOf('pink'), fonts));
    expect(named.height).toBeGreaterThan(less.height);
  });

  it('draw the report of marked stills, and say of a mark that it was not used', () => {
    const stills = reelOf('warm');
    const neutral = [{ still: 1, x: 20, y: 30, width: 20, height: 10 }];
    const black = [{ still: 1, x: 110, y: 60, width: 10, height: 10 }];
    const reel = measureReelToLook({ stills, marks: { neutral, black }, dyes: 'auto' });
    expect(reel.usable).toMatchObject({ neutral, black: [] });
    const report = reportReel(reel, stills, fonts);
    expect(report).toMatchObject({ width: 1600, channels: 3, bits: 8 });
    const asIfUsed = reportReel({ ...reel, usable: reel.marks }, stills, fonts);
    expect(Buffer.from(report.data).equals(Buffer.from(asIfUsed.data))).toBe(false);
  });
});
