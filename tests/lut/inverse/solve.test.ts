import { describe, expect, it } from 'vitest';
import { sampleLut } from '../../../src/lut/interpolate.js';
import { normalEquations, recorded, spreadColours } from '../../../src/lut/inverse/normal-equations.js';
import { solve } from '../../../src/lut/inverse/solve.js';
import { locate, newTetrahedron } from '../../../src/lut/inverse/tetrahedron.js';
import type { Lattice } from '../../../src/lut/lattice.js';
import type { Run } from '../../../src/maths/matrix3.js';
import { seededRandom } from '../../../src/maths/random.js';

const latticeOf = (size: number, values: Float64Array): Lattice => ({
  kind: '3d',
  size,
  domainMin: [0, 0, 0],
  domainMax: [1, 1, 1],
  values,
});

describe('the four nodes of a tetrahedral reader', () => {
  it('weigh to what the reader gives, on any lattice and for any colour, beyond 0..1 too', () => {
    const random = seededRandom(21);
    const at = newTetrahedron();
    for (let round = 0; round < 2000; round++) {
      const size = 2 + (round % 5);
      const values = Float64Array.from({ length: 3 * size ** 3 }, random);
      const colour = [0, 1, 2].map(() => -0.2 + 1.4 * random());
      if (round % 4 === 0) colour[1] = colour[0];
      if (round % 9 === 0) colour[2] = Math.round(colour[2]);
      const expected = Float64Array.from(colour);
      sampleLut(latticeOf(size, values))(expected, 1);
      locate(colour[0], colour[1], colour[2], size, at);
      for (let c = 0; c < 3; c++) {
        const got = [0, 1, 2, 3].reduce((sum, k) => sum + at.weights[k] * values[3 * at.nodes[k] + c], 0);
        expect(got).toBeCloseTo(expected[c], 12);
      }
    }
  });
});

/** Gaussian elimination with row exchange on a dense matrix: the slow plain version. */
function eliminate(a: number[][], right: number[]): number[] {
  const n = right.length;
  for (let k = 0; k < n; k++) {
    const pivot = a.reduce(
      (best, row, i) => (i >= k && Math.abs(row[k]) > Math.abs(a[best][k]) ? i : best),
      k,
    );
    [a[k], a[pivot], right[k], right[pivot]] = [a[pivot], a[k], right[pivot], right[k]];
    for (let i = k + 1; i < n; i++) {
      const share = a[i][k] / a[k][k];
      for (let j = k; j < n; j++) a[i][j] -= share * a[k][j];
      right[i] -= share * right[k];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--)
    x[k] = (right[k] - x.reduce((sum, value, j) => (j > k ? sum + a[k][j] * value : sum), 0)) / a[k][k];
  return x;
}

/** The same least squares with every equation written out: fit rows by a reader's weights, bends by hand. */
function denseFit(look: Run, size: number, smoothness: number): Float64Array {
  const nodes = size ** 3;
  const normal = Array.from({ length: nodes }, () => new Array<number>(nodes).fill(0));
  const right = [0, 1, 2].map(() => new Array<number>(nodes).fill(0));
  const unit = Array.from({ length: nodes }, (_, node) => {
    const values = new Float64Array(3 * nodes);
    values[3 * node] = 1;
    return sampleLut(latticeOf(size, values));
  });
  let weight = 0;
  spreadColours(48, 1, (colours, count) => {
    const burnt = colours.slice();
    look(burnt, count);
    const clamped = burnt.map(recorded);
    const rows = unit.map((reader) => {
      const run = clamped.slice();
      reader(run, count);
      return run;
    });
    for (let i = 0; i < count; i++)
      for (let k = 0; k < nodes; k++) {
        const w = rows[k][3 * i];
        if (w === 0) continue;
        weight += w * w;
        for (let l = 0; l < nodes; l++) normal[k][l] += w * rows[l][3 * i];
        for (let c = 0; c < 3; c++) right[c][k] += w * colours[3 * i + c];
      }
  });
  const bend = (smoothness * weight) / nodes;
  for (const step of [1, size, size * size])
    for (let node = 0; node < nodes; node++) {
      const along = Math.floor(node / step) % size;
      if (along === 0 || along === size - 1) continue;
      const [members, factors] = [
        [node - step, node, node + step],
        [1, -2, 1],
      ];
      for (let k = 0; k < 3; k++)
        for (let l = 0; l < 3; l++) normal[members[k]][members[l]] += bend * factors[k] * factors[l];
    }
  const solved = right.map((side) =>
    eliminate(
      normal.map((row) => [...row]),
      [...side],
    ),
  );
  return Float64Array.from({ length: 3 * nodes }, (_, i) => solved[i % 3][Math.floor(i / 3)]);
}

describe('the fit', () => {
  it('is the least-squares solution written out in full', () => {
    const look: Run = (values, count) => {
      for (let i = 0; i < 3 * count; i += 3) {
        const [r, g, b] = [values[i], values[i + 1], values[i + 2]];
        values[i] = 0.1 + 0.7 * r ** 1.4 + 0.1 * g;
        values[i + 1] = 0.8 * g + 0.1 * b;
        values[i + 2] = 0.05 + 0.6 * b ** 0.8;
      }
    };
    const values = new Float64Array(3 * 27);
    solve(normalEquations(look, 3), values, { smoothness: 1e-2, tolerance: 1e-12, mostSteps: 1000 });
    const expected = denseFit(look, 3, 1e-2);
    for (let i = 0; i < values.length; i++) expect(values[i]).toBeCloseTo(expected[i], 8);
  });
});
