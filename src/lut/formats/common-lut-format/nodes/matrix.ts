import type { Matrix3, Triple } from '../../../../maths/matrix3.js';
import { transformRun3 } from '../../../../maths/matrix3.js';
import type { NodeKind } from '../node.js';
import { dimensions, numbersOf, onlyChild } from '../node.js';

/** Three rows of factors, with or without an offset each; a row makes an output. */
export const matrix: NodeKind = (source) => {
  const { refuse, inScale, outScale } = source;
  const array = onlyChild(source, 'Array');
  const [rows, columns] = dimensions(source, array);
  if (rows !== 3 || (columns !== 3 && columns !== 4)) refuse(array.at, 'the dim of a Matrix is 3 3 or 3 4');
  const numbers = numbersOf(source, array, rows * columns);
  const entry = (row: number, column: number) => (numbers[row * columns + column] * inScale) / outScale;
  const offsets = [0, 1, 2].map((row) => (columns === 4 ? numbers[row * 4 + 3] / outScale : 0));
  const factors = [0, 1, 2].flatMap((row) => [0, 1, 2].map((column) => entry(row, column)));
  const diagonal = factors.every((factor, i) => i % 4 === 0 || factor === 0);
  const affine = { scale: [factors[0], factors[4], factors[8]], offset: offsets } as unknown as {
    scale: Triple;
    offset: Triple;
  };
  return {
    run: (values, count) => {
      transformRun3(factors as unknown as Matrix3, values, count);
      for (let i = 0; i < 3 * count; i++) values[i] += offsets[i % 3];
    },
    separable: diagonal,
    ...(diagonal ? { affine } : {}),
  };
};
