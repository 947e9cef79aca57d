import { sampleLut } from '../../../interpolate.js';
import { type CurveTable, ones, zeros } from '../../../lattice.js';
import { limits } from '../../limits.js';
import type { NodeKind } from '../node.js';
import { childrenOf, dimensions, numbersOf, onlyChild } from '../node.js';

/** One curve for all channels, or one each, over 0..1. */
export const lut1d: NodeKind = (source) => {
  const { element, refuse, outScale } = source;
  for (const name of ['halfDomain', 'rawHalfs'])
    if (element.attributes.get(name) === 'true') refuse(element.at, `a LUT1D with ${name} is not read`);
  if (childrenOf(element, 'IndexMap').length > 0) refuse(element.at, 'a LUT1D with an IndexMap is not read');
  const array = onlyChild(source, 'Array');
  const [size, columns] = dimensions(source, array);
  const { least, most } = limits.curveSize;
  if (columns !== 1 && columns !== 3) refuse(array.at, 'the dim of a LUT1D is N 1 or N 3');
  if (size < least || size > most) refuse(array.at, `a LUT1D has ${least} to ${most} entries, not ${size}`);
  const numbers = numbersOf(source, array, size * columns);
  const values = Float64Array.from(
    { length: 3 * size },
    (_, i) => numbers[columns === 3 ? i : Math.floor(i / 3)] / outScale,
  );
  const lut: CurveTable = { kind: '1d', size, domainMin: zeros, domainMax: ones, values };
  return { run: sampleLut(lut), separable: true, lut };
};
