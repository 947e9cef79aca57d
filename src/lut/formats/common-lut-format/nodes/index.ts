import type { NodeKind } from '../node.js';
import { ascCdl } from './asc-cdl.js';
import { exponent } from './exponent.js';
import { log } from './log.js';
import { lut1d } from './lut1d.js';
import { lut3d } from './lut3d.js';
import { matrix } from './matrix.js';
import { range } from './range.js';

/** The process nodes that are read, by the name of their element. */
export const nodes = {
  LUT1D: lut1d,
  LUT3D: lut3d,
  Matrix: matrix,
  Range: range,
  Log: log,
  Exponent: exponent,
  ASC_CDL: ascCdl,
} satisfies Record<string, NodeKind>;
