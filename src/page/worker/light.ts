import { compileLook } from '../../look/compile-look.js';
import type { Look } from '../../look/look-schema.js';
import { lookOverCodes } from '../../look/over-codes.js';
import { codesOfFilm } from '../../look/sections/camera.js';
import { toScreen, signalsOf } from '../../jobs/signal.js';
import { nodeCode, type Lut, sampleLattice } from '../../lut/lattice.js';
import { sampleLut } from '../../lut/interpolate.js';
import type { Run } from '../../maths/matrix3.js';
import { coarseSize } from '../coarse.js';
import { makeDyeModel } from './make-dye-model.js';
import { lookUpTo, stationNames, wedgeSteps } from '../stations/up-to.js';

let lastCompiled: { readonly key: string; readonly run: Run } | undefined;

/** A look's function; of one and the same look in turn, compiled once. */
function compiledOnce(look: Look): Run {
  const key = JSON.stringify(look);
  if (lastCompiled?.key !== key) lastCompiled = { key, run: compileLook(look, makeDyeModel) };
  return lastCompiled.run;
}

/** Code values of the planes (of one blue each) `from` up to `to` of a lattice. */
function planeCodes(size: number, from: number, to: number): Float64Array {
  const values = new Float64Array(3 * size * size * (to - from));
  for (let b = from, at = 0; b < to; b++)
    for (let g = 0; g < size; g++)
      for (let r = 0; r < size; r++, at += 3) {
        values[at] = nodeCode(r, size, 0, 1);
        values[at + 1] = nodeCode(g, size, 0, 1);
        values[at + 2] = nodeCode(b, size, 0, 1);
      }
  return values;
}

/** Planes of coarse lattices, remembered while a control moves; each worker is asked for the same ones again and again. */
const remembered = new Map<string, (look: Look) => Float64Array>();
const mostRemembered = 8;

function coarsePlanes(look: Look, size: number, from: number, to: number): Float64Array {
  const key = `${size} ${from} ${to}`;
  if (!remembered.has(key) && remembered.size >= mostRemembered) remembered.clear();
  const over = remembered.get(key) ?? lookOverCodes(planeCodes(size, from, to), makeDyeModel);
  remembered.set(key, over);
  return over(look);
}

/**
 * Some planes of a look's lattice: what one worker computes of it while another computes the rest.
 * @returns rows r g b of the planes `from` up to `to`
 */
export function latticePlanes(look: Look, size: number, from: number, to: number): Float32Array {
  if (size <= coarseSize) return Float32Array.from(coarsePlanes(look, size, from, to));
  const values = planeCodes(size, from, to);
  compiledOnce(look)(values, values.length / 3);
  return Float32Array.from(values);
}

/** Any table as a lattice from 0 to 1 that the display can hold. */
export function tableLattice(lut: Lut): { size: number; values: Float32Array } {
  const size = lut.kind === '1d' ? 65 : Math.min(lut.size, 65);
  return { size, values: Float32Array.from(sampleLattice(sampleLut(lut), size).values) };
}

const clamp = (value: number) => Math.min(1, Math.max(0, value));

/** Code values of a grey wedge between no light and the open gate, each three times. */
function wedgeCodes(look: Look): Float64Array {
  const { none, openGate } = codesOfFilm(look.camera);
  return Float64Array.from(
    { length: 3 * wedgeSteps },
    (_, i) => none + ((openGate - none) * Math.floor(i / 3)) / (wedgeSteps - 1),
  );
}

function shown(look: Look, run: Run | undefined): number[] {
  const codes = wedgeCodes(look);
  run?.(codes, wedgeSteps);
  return [...codes].map(clamp);
}

const compiled = new Map<string, number[]>();

/** A wedge as an sRGB screen shows it once light has come as far as a station. Kept, since most stations stay as they are. */
function wedgeAfter(look: Look, station: (typeof stationNames)[number]): number[] {
  const part = lookUpTo(look, station);
  const key = JSON.stringify([station, part]);
  const known = compiled.get(key);
  if (known !== undefined) return known;
  if (compiled.size > 500) compiled.clear();
  const run = compileLook(part, makeDyeModel);
  const screen = toScreen(signalsOf(part).output);
  const wedge = shown(look, (values, count) => {
    run(values, count);
    screen?.(values, count);
  });
  compiled.set(key, wedge);
  return wedge;
}

/**
 * What every station does to a grey wedge, as an sRGB screen shows it: first the wedge as the camera wrote it, code
 * values taken as they are, then the wedge behind each station.
 */
export function wedges(look: Look): number[][] {
  return [shown(look, undefined), ...stationNames.map((station) => wedgeAfter(look, station))];
}
