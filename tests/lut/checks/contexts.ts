import { primaries } from '../../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../../src/colour/primaries/rgb-matrix.js';
import { type SignalRange, toFull } from '../../../src/colour/signal-range.js';
import { transferFunctions } from '../../../src/colour/transfer-functions/index.js';
import type { CheckContext, Finding } from '../../../src/lut/checks/index.js';
import type { CurveTable, Lut } from '../../../src/lut/lattice.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { type Run, transformRun3 } from '../../../src/maths/matrix3.js';

const toXyz = rgbToXyz(primaries.bt709);

function decoder(encoding: keyof typeof transferFunctions, range: SignalRange): Run {
  const { decode } = transferFunctions[encoding];
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = decode(toFull(values[i], range));
    transformRun3(toXyz, values, count);
  };
}

/** A LUT between two signals of the same kind, BT.709 primaries. */
export function contextOf(
  lut: Lut,
  encoding: keyof typeof transferFunctions = 'srgb',
  range: SignalRange = 'full',
): CheckContext {
  const decode = decoder(encoding, range);
  return { lut, range, decodeInput: decode, decodeOutput: decode };
}

/** A lattice that takes each channel through a curve. */
export const latticeOf = (curve: (code: number, channel: number) => number, size = 33): Lut =>
  sampleLattice((run) => void run.forEach((code, i) => (run[i] = curve(code, i % 3))), size);

/** Curves fine enough to be taken for the function itself. */
export function curvesOf(curve: (code: number, channel: number) => number, size = 4097): CurveTable {
  const values = Float64Array.from({ length: 3 * size }, (_, i) =>
    curve(Math.floor(i / 3) / (size - 1), i % 3),
  );
  return { kind: '1d', size, domainMin: [0, 0, 0], domainMax: [1, 1, 1], values };
}

/** The finding of a name. */
export function named(findings: readonly Finding[], name: string): Finding {
  const finding = findings.find((candidate) => candidate.name === name);
  if (!finding)
    throw new Error(`no finding is called ${name}: ${findings.map((one) => one.name).join(', ')}`);
  return finding;
}

export const identity = latticeOf((code) => code);
