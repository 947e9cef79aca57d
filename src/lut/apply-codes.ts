import { sampleLut } from './interpolate.js';
import type { Lattice, Lut } from './lattice.js';
import { nodePosition } from './lattice.js';

/** Code values of a picture, 8 or 16 bit. */
export type Codes = Uint8Array | Uint16Array;

/** Code values of a picture of any depth; as floats, 1 is the highest code and nothing is clamped. */
export type Samples = Codes | Float32Array;

const highestCode = (codes: Codes): number => (codes.BYTES_PER_ELEMENT === 1 ? 255 : 65535);

/** @throws RangeError when a picture's arrays do not fit one another */
export function requireFit(source: Samples, target: Samples, channels: number): void {
  if (source.length !== target.length || source.length % channels !== 0)
    throw new RangeError(`${source.length} codes in, ${target.length} out do not fit ${channels} channels`);
  if (source instanceof Float32Array !== target instanceof Float32Array)
    throw new RangeError('a picture in floats goes to floats, and one in codes to codes');
}

/**
 * A picture's codes through a LUT, tetrahedrally: code / highest code in, rounded half up and clamped out; floats as
 * they are, rounded to floats. A code differs by at most 1, and rarely, from the same done with `sampleLut` in double
 * precision. The plain way, which any faster engine is held to: see engine/.
 * @param lut 3D or 1D
 * @param source interleaved r g b or r g b alpha; grey is expanded by the caller, since a look may colour it
 * @param target as long as `source`, may be `source`; its own depth, 8 or 16 bit, is what is written
 * @param channels 3, or 4 with an alpha, which is copied (scaled if the depths differ)
 * @throws RangeError when the lengths do not fit, or floats meet codes
 */
export function applyToCodes(lut: Lut, source: Samples, target: Samples, channels: 3 | 4): void {
  requireFit(source, target, channels);
  if (source instanceof Float32Array || target instanceof Float32Array)
    return floatsThrough(lut, source as Float32Array, target as Float32Array, channels);
  if (lut.kind === '3d') throughLattice(lut, source, target, channels);
  else throughCurves(lut, source, target, channels);
  if (channels === 4) copyAlpha(source, target);
}

/** Floats worked on at once: they fit into the nearest cache as doubles. */
const floatsAtOnce = 1024;

/** The LUT's own function in doubles. Alpha goes along untouched. */
function floatsThrough(lut: Lut, source: Float32Array, target: Float32Array, channels: number): void {
  const through = sampleLut(lut);
  const run = new Float64Array(3 * floatsAtOnce);
  const pixels = source.length / channels;
  for (let first = 0; first < pixels; first += floatsAtOnce) {
    const count = Math.min(floatsAtOnce, pixels - first);
    for (let i = 0; i < count; i++)
      for (let c = 0; c < 3; c++) run[3 * i + c] = source[channels * (first + i) + c];
    through(run, count);
    for (let i = 0; i < count; i++) {
      const at = channels * (first + i);
      for (let c = 0; c < 3; c++) target[at + c] = run[3 * i + c];
      if (channels === 4) target[at + 3] = source[at + 3];
    }
  }
}

/** For each code of one channel: where its cell begins in the lattice, and how far into the cell it lies. */
function cellTable(lattice: Lattice, channel: 0 | 1 | 2, highest: number) {
  const stride = 3 * lattice.size ** channel;
  const last = lattice.size - 1;
  const corner = new Int32Array(highest + 1);
  const fraction = new Float64Array(highest + 1);
  for (let code = 0; code <= highest; code++) {
    const position = nodePosition(
      code / highest,
      lattice.domainMin[channel],
      lattice.domainMax[channel],
      last,
    );
    const cell = Math.min(Math.floor(position), last - 1);
    corner[code] = stride * cell;
    fraction[code] = position - cell;
  }
  return { corner, fraction };
}

/**
 * The loop of `tetrahedral` in interpolate.ts over tables: the lattice is scaled to codes, and the half that
 * rounds is in it already (weights sum to one), so that cutting off the decimals is rounding half up.
 */
function throughLattice(lattice: Lattice, source: Codes, target: Codes, channels: number): void {
  const most = highestCode(target);
  const values = lattice.values.map((value) => value * most + 0.5);
  const highest = highestCode(source);
  const { corner: cornerR, fraction: fractionR } = cellTable(lattice, 0, highest);
  const { corner: cornerG, fraction: fractionG } = cellTable(lattice, 1, highest);
  const { corner: cornerB, fraction: fractionB } = cellTable(lattice, 2, highest);
  const red = 3;
  const green = 3 * lattice.size;
  const blue = green * lattice.size;
  const white = red + green + blue;
  for (let i = 0; i < source.length; i += channels) {
    const fr = fractionR[source[i]];
    const fg = fractionG[source[i + 1]];
    const fb = fractionB[source[i + 2]];
    let first = green;
    let two = green + blue;
    let high = fg;
    let middle = fb;
    let low = fr;
    if (fr >= fg && fr >= fb) {
      first = red;
      high = fr;
      if (fg >= fb) {
        two = red + green;
        middle = fg;
        low = fb;
      } else {
        two = red + blue;
        low = fg;
      }
    } else if (fg >= fb) {
      if (fr >= fb) {
        two = green + red;
        middle = fr;
        low = fb;
      }
    } else {
      first = blue;
      high = fb;
      if (fr >= fg) {
        two = blue + red;
        middle = fr;
        low = fg;
      } else middle = fg;
    }
    const at0 = cornerR[source[i]] + cornerG[source[i + 1]] + cornerB[source[i + 2]];
    const at1 = at0 + first;
    const at2 = at0 + two;
    const at3 = at0 + white;
    const w0 = 1 - high;
    const w1 = high - middle;
    const w2 = middle - low;
    target[i] = toCode(values[at0] * w0 + values[at1] * w1 + values[at2] * w2 + values[at3] * low, most);
    target[i + 1] = toCode(
      values[at0 + 1] * w0 + values[at1 + 1] * w1 + values[at2 + 1] * w2 + values[at3 + 1] * low,
      most,
    );
    target[i + 2] = toCode(
      values[at0 + 2] * w0 + values[at1 + 2] * w1 + values[at2 + 2] * w2 + values[at3 + 2] * low,
      most,
    );
  }
}

/** Cuts a number of codes, half a code already added, down to a code that exists. NaN becomes 0. */
function toCode(raised: number, most: number): number {
  if (raised >= most) return most;
  return raised > 0 ? raised | 0 : 0;
}

/** A 1D LUT is a table of codes for each channel. */
function throughCurves(lut: Lut, source: Codes, target: Codes, channels: number): void {
  const highest = highestCode(source);
  const most = highestCode(target);
  const ramp = Float64Array.from({ length: 3 * (highest + 1) }, (_, i) => Math.floor(i / 3) / highest);
  sampleLut(lut)(ramp, highest + 1);
  const table = Uint16Array.from(ramp, (value) => toCode(value * most + 0.5, most));
  for (let i = 0; i < source.length; i += channels)
    for (let c = 0; c < 3; c++) target[i + c] = table[3 * source[i + c] + c];
}

function copyAlpha(source: Codes, target: Codes): void {
  const scale = highestCode(target) / highestCode(source);
  for (let i = 3; i < source.length; i += 4) target[i] = Math.round(source[i] * scale);
}
