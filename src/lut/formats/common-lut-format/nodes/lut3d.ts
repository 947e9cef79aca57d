import { sampleLut } from '../../../interpolate.js';
import { type Lattice, ones, zeros } from '../../../lattice.js';
import { limits } from '../../limits.js';
import type { NodeKind } from '../node.js';
import { dimensions, numbersOf, onlyChild } from '../node.js';

/** Turns a table from red fastest to blue fastest, or back: the two are mirror images. */
export function turned(values: Float64Array, size: number): Float64Array {
  const out = new Float64Array(values.length);
  for (let slow = 0, to = 0; slow < size; slow++)
    for (let middle = 0; middle < size; middle++)
      for (let fast = 0; fast < size; fast++, to += 3) {
        const from = 3 * (slow + size * (middle + size * fast));
        out.set(values.subarray(from, from + 3), to);
      }
  return out;
}

/** A 3D table over 0..1, blue fastest. */
export const lut3d: NodeKind = (source) => {
  const { element, refuse, outScale } = source;
  const array = onlyChild(source, 'Array');
  const [size, green, blue, channels] = dimensions(source, array);
  const { least, most } = limits.latticeSize;
  if (green !== size || blue !== size || channels !== 3) refuse(array.at, 'the dim of a LUT3D is N N N 3');
  if (size < least || size > most)
    refuse(array.at, `a LUT3D has ${least} to ${most} points a side, not ${size}`);
  const values = turned(numbersOf(source, array, 3 * size ** 3), size).map((value) => value / outScale);
  const lut: Lattice = { kind: '3d', size, domainMin: zeros, domainMax: ones, values };
  const method = element.attributes.get('interpolation') ?? 'trilinear';
  if (method !== 'trilinear' && method !== 'tetrahedral')
    return refuse(element.at, 'the interpolation of a LUT3D is trilinear or tetrahedral');
  const note = 'It asks for trilinear interpolation; here a table is read tetrahedrally.';
  return { run: sampleLut(lut, method), separable: false, lut, ...(method === 'trilinear' ? { note } : {}) };
};
