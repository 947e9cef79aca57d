// What the page's workers do: each a job of the core, called by name. They know pictures and looks; nothing of the
// document, its state or its controls.
import { encode as encodePng } from 'fast-png';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { InputError } from '../../errors/input-error.js';
import { type DemoAgeName, type DemoStillName, renderDemoStill } from '../../demo/index.js';
import { applyLook } from '../../jobs/apply-look.js';
import { buildLook, type BuildOptions, type Maker, signalsIn } from '../../jobs/build-look.js';
import { checkFile, isGood } from '../../jobs/check-lut.js';
import { type MeasuredReel, measureReelToLook, type ReelRequest } from '../../jobs/measure-reel.js';
import { previewLook } from '../../jobs/preview-look.js';
import { reportReel } from '../../jobs/report-reel.js';
import { screenSignals, type Signals } from '../../jobs/signal.js';
import type { Look } from '../../look/look-schema.js';
import type { Lattice, Lut } from '../../lut/lattice.js';
import { lutFormatOf } from '../../lut/formats/index.js';
import type { LutFile } from '../../lut/formats/lut-format.js';
import { findClipping } from '../../preview/clipping-marks.js';
import { turnUpright } from '../../picture/orientation.js';
import type { Picture } from '../../picture/picture.js';
import { fitWithin, resample } from '../../picture/resample.js';
import { applyEngine } from './apply-engine.js';
import { decodeStill } from './decode-still.js';
import { labelFonts } from './label-fonts.js';
import { levelsOf } from './levels.js';
import { latticePlanes, tableLattice, wedges } from './light.js';
import { makeDyeModel } from './make-dye-model.js';
import type { ScopeName } from './scope-names.js';
import { drawScope, limitsOf } from './scopes.js';
import { stillCache } from './still-cache.js';
import { dropStill, keepStill, storedNames, storedStill } from './still-store.js';

const maker: Maker = {
  version: __VERSION__,
  sha256: (text) => bytesToHex(sha256(utf8ToBytes(text))),
  makeDyeModel,
};

const stills = stillCache(async (id) => {
  const stored = await storedStill(id);
  if (stored === undefined)
    throw new InputError({ what: 'a still was not kept by this browser', hint: 'Open it again.' });
  return decodeStill(stored.bytes, stored.name);
});

/** The reel that was measured last, for its report. */
let measured: { reel: MeasuredReel; stills: ReelRequest['stills'] } | undefined;

/** What scopes and thumbs are worked on: a still made smaller by averaging. */
const smallWithin = { width: 512, height: 512 };
const thumbWithin = { width: 176, height: 96 };

function shrink(picture: Picture, within: { width: number; height: number }): Picture {
  const { width, height } = fitWithin(picture, within);
  return width < picture.width ? resample(picture, width, height) : picture;
}

const smalls = new Map<string, Picture>();

async function smallStill(id: string): Promise<Picture> {
  const small = smalls.get(id) ?? shrink(await stills.get(id), smallWithin);
  smalls.set(id, small);
  return small;
}

/** A lattice as it travels between workers and the page. */
export interface FlatLattice {
  readonly size: number;
  readonly values: Float32Array;
}

const unit = { domainMin: [0, 0, 0], domainMax: [1, 1, 1] } as const;

const latticeOf = ({ size, values }: FlatLattice): Lattice => ({
  kind: '3d',
  size,
  ...unit,
  values: Float64Array.from(values),
});

async function takeStill(id: string, name: string, bytes: Uint8Array, picture: Picture) {
  stills.keep(id, picture);
  const kept = await keepStill(id, { name, bytes });
  const { width, height, bits } = picture;
  return { id, name, width, height, bits, kept };
}

export const tasks = {
  latticePlanes: async (o: { look: Look; size: number; from: number; to: number }) =>
    latticePlanes(o.look, o.size, o.from, o.to),

  wedges: async (o: { look: Look }) => wedges(o.look),

  addStill: async (o: { id: string; name: string; bytes: Uint8Array }) =>
    takeStill(o.id, o.name, o.bytes, await decodeStill(o.bytes, o.name)),

  addDemoStill: async (o: { id: string; still: DemoStillName; age: DemoAgeName }) => {
    const picture = renderDemoStill(o.still, { age: o.age, width: 1440, height: 1080 });
    const bytes = encodePng({ ...picture, depth: picture.bits });
    return takeStill(o.id, `${o.still}-${o.age}.png`, bytes, picture);
  },

  storedNames: async (_: object) => storedNames(),

  dropStill: async (o: { id: string }) => dropStill(o.id),

  /** The still as the display holds it. `most` leaves out levels with more pixels along a side. */
  showStill: async (o: { id: string; halfFloats: boolean; most?: number }) => {
    const levels = levelsOf(await stills.get(o.id), o.halfFloats);
    const fits = levels.filter(({ width, height }) => Math.max(width, height) <= (o.most ?? Infinity));
    return fits.length > 0 ? fits : levels.slice(-1);
  },

  thumb: async (o: { id: string }) => shrink(await smallStill(o.id), thumbWithin),

  scope: async (o: {
    id: string;
    lattice?: FlatLattice;
    scope: ScopeName;
    width: number;
    height: number;
  }) => {
    const lut = o.lattice && latticeOf(o.lattice);
    return drawScope(o.scope, await smallStill(o.id), lut, o.width, o.height);
  },

  clipping: async (o: { id: string; lattice: FlatLattice; signals: Signals }) => {
    const before = await stills.get(o.id);
    const after = applyLook(latticeOf(o.lattice), before, applyEngine);
    const limits = {
      before: limitsOf(o.signals.input, before),
      after: limitsOf(o.signals.output, after),
    };
    return findClipping(before, after, limits).shares;
  },

  build: async (o: { look: Look; options: BuildOptions }) => buildLook(o.look, o.options, maker).text,

  /** What `gatelight check` answers to the file that would be written. */
  checkLook: async (o: { look: Look; size: number }) => {
    const { bytes } = buildLook(o.look, { size: o.size }, maker);
    const reader = lutFormatOf('look.cube').createReader('look.cube');
    reader.write(bytes);
    const findings = checkFile(reader.end(), o.look);
    return { findings, good: isGood(findings) };
  },

  checkFile: async (o: { file: LutFile }) => {
    const findings = checkFile(o.file);
    return { findings, good: isGood(findings) };
  },

  /** Reads a .cube file and keeps it; without bytes, one that was kept. */
  readLut: async (o: { id: string; name: string; bytes?: Uint8Array }) => {
    const stored = o.bytes === undefined ? await storedStill(o.id) : { name: o.name, bytes: o.bytes };
    if (stored === undefined)
      throw new InputError({ file: o.name, what: 'was not kept by this browser', hint: 'Open it again.' });
    const reader = lutFormatOf(stored.name).createReader(stored.name);
    reader.write(stored.bytes);
    const file = reader.end();
    if (o.bytes !== undefined) await keepStill(o.id, stored);
    const known = signalsIn(file);
    const unknown = 'It does not say which code values it takes and gives: they are taken as sRGB.';
    return {
      file,
      shown: tableLattice(file.lut),
      signals: known ?? screenSignals,
      notes: known !== undefined ? file.notes : [...file.notes, unknown],
    };
  },

  /** What time did to the reel, by its stills and marks; the look gives the camera. */
  measure: async (o: {
    stills: readonly { id: string; name: string }[];
    marks: ReelRequest['marks'];
    dyes: ReelRequest['dyes'];
    openGate?: number;
    look: Look;
  }) => {
    const pictures: { name: string; picture: Picture }[] = [];
    for (const { id, name } of o.stills) pictures.push({ name, picture: await stills.get(id) });
    const { marks, dyes, openGate, look } = o;
    const like = { look, fields: look as unknown as Record<string, unknown> };
    const reel = measureReelToLook({
      stills: pictures,
      marks,
      dyes,
      like,
      ...(openGate === undefined ? {} : { openGate }),
    });
    measured = { reel, stills: pictures };
    const { cloud, points, ...found } = reel.measurement;
    return { ...found, unused: reel.unused };
  },

  /** The report of what was measured last, as a PNG. */
  report: async (_: object) => {
    if (measured === undefined) throw new InputError({ what: 'nothing is measured yet' });
    const picture = reportReel(measured.reel, measured.stills, labelFonts());
    return encodePng({ ...picture, depth: 8 });
  },

  preview: async (o: {
    id: string;
    still: string;
    lut: Lut | FlatLattice;
    signals: Signals;
    name: string;
    orientation: number;
  }) => {
    const lut = 'kind' in o.lut ? o.lut : latticeOf(o.lut);
    const picture = turnUpright(await stills.get(o.id), o.orientation);
    const still = { name: o.still, picture };
    const seen = previewLook(lut, o.signals, still, o.name, labelFonts(), applyEngine);
    return encodePng({ ...seen.picture, depth: 8 });
  },
};

export type Tasks = typeof tasks;
