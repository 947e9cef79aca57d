import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { fromFull, toFull } from '../../src/colour/signal-range.js';
import type { CauseName } from '../../src/burn-in/causes/index.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import type { Lattice } from '../../src/lut/lattice.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import type { Run } from '../../src/maths/matrix3.js';

/** What a device with a fault does to codes, written here anew and step by step, not with the causes' own functions. */
export interface Device {
  readonly fault: CauseName | undefined;
  readonly words: string;
  readonly run: Run;
}

const each =
  (change: (code: number) => number): Run =>
  (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = Math.max(0, Math.min(1, change(values[i])));
  };

const chain =
  (...runs: Run[]): Run =>
  (values, count) =>
    runs.forEach((run) => {
      run(values, count);
      each((code) => code)(values, count);
    });

/** The table as a device stores it that takes the rows of the file blue fastest. */
function bluefirst(lut: Lattice): Lattice {
  const n = lut.size;
  const values = new Float64Array(lut.values.length);
  for (let b = 0; b < n; b++)
    for (let g = 0; g < n; g++)
      for (let r = 0; r < n; r++)
        for (let c = 0; c < 3; c++)
          values[3 * (r + n * (g + n * b)) + c] = lut.values[3 * (b + n * (g + n * r)) + c];
  return { ...lut, values };
}

function columnsTurned(lut: Lattice): Lattice {
  const values = lut.values.map((_, i) => lut.values[i - (i % 3) + 2 - (i % 3)]);
  return { ...lut, values };
}

const { srgb, hlg, bt709 } = transferFunctions;
const brighter = (stops: number) => each((code) => srgb.encode(srgb.decode(code) * 2 ** stops));

/** A device without fault and one for every usual cause, some in two or three forms. */
export function devicesFor(lut: Lattice, other: Run): Device[] {
  const look = sampleLut(lut);
  const [stretch, shrink] = [each((code) => toFull(code)), each((code) => fromFull(code))];
  const smaller = (size: number) => sampleLut(sampleLattice(chain(look), size));
  const device = (fault: CauseName | undefined, words: string, ...runs: Run[]): Device => ({
    fault,
    words,
    run: chain(...runs),
  });
  return [
    device(undefined, 'as the file says', look),
    device('not-applied', ''),
    device('applied-twice', '', look, look),
    device('signal-range', 'stretched before', stretch, look),
    device('signal-range', 'shrunk after', look, shrink),
    device('signal-range', 'stretched twice', look, stretch, stretch),
    device('signal-range', 'shrunk before, stretched after', shrink, look, stretch),
    // ITU-R BT.709-6: black 16 and white 235 of 8 bits.
    device(
      'signal-range',
      '8 bits, shrunk before',
      each((code) => (16 + 219 * code) / 255),
      look,
    ),
    device(
      'signal-range',
      '8 bits, stretched after',
      look,
      each((code) => (255 * code - 16) / 219),
    ),
    device('table-order', 'rows blue first', sampleLut(bluefirst(lut))),
    device('table-order', 'columns turned', sampleLut(columnsTurned(lut))),
    device('camera-curve', 'before HLG', each(hlg.decode), look, each(hlg.encode)),
    device('camera-curve', 'before BT.709', each(bt709.decode), look, each(bt709.encode)),
    device('exposure', '+0.3 stops', brighter(0.3), look),
    device('exposure', '-0.5 stops', brighter(-0.5), look),
    device('trilinear', '', sampleLut(lut, 'trilinear')),
    device('smaller-table', '9 points', smaller(9)),
    device('smaller-table', '17 points', smaller(17)),
    device('another-file', '', other),
  ];
}
