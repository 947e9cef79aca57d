import type { NormalEquations } from './normal-equations.js';

/** Rows between a node and the one at a corner 1..7 of its cell. */
const cornerStep = (corner: number, size: number): number =>
  (corner & 1) + size * (((corner >> 1) & 1) + size * (corner >> 2));

/** out = (fit + smoothness) p, for one channel. */
function multiply(equations: NormalEquations, smoothness: number, p: Float64Array, out: Float64Array): void {
  const { size, matrix } = equations;
  const steps = Array.from({ length: 8 }, (_, corner) => cornerStep(corner, size));
  const nodes = p.length;
  out.fill(0);
  for (let node = 0; node < nodes; node++) {
    const row = 8 * node;
    const here = p[node];
    let sum = matrix[row] * here;
    for (let corner = 1; corner < 8; corner++) {
      const entry = matrix[row + corner];
      if (entry === 0) continue;
      const there = node + steps[corner];
      sum += entry * p[there];
      out[there] += entry * here;
    }
    out[node] += sum;
  }
  for (const [axis, step] of [1, size, size * size].entries())
    addBending(size, axis, step, smoothness, p, out);
}

/** Adds the gradient of the sum of squared second differences along one axis. */
function addBending(
  size: number,
  axis: number,
  step: number,
  weight: number,
  p: Float64Array,
  out: Float64Array,
) {
  for (let node = step; node < p.length - step; node++) {
    const along = Math.floor(node / size ** axis) % size;
    if (along === 0 || along === size - 1) continue;
    const bend = weight * (p[node - step] - 2 * p[node] + p[node + step]);
    out[node - step] += bend;
    out[node] -= 2 * bend;
    out[node + step] += bend;
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

/** The diagonal of the whole matrix, for scaling: six bends of weight 1, 4 and 1 meet at most nodes. */
function scaling({ matrix }: NormalEquations, smoothness: number, nodes: number): Float64Array {
  return Float64Array.from({ length: nodes }, (_, node) => 1 / (matrix[8 * node] + 18 * smoothness));
}

export interface SolveOptions {
  /** Weight of smoothness against fit. */
  readonly smoothness: number;
  /** Stop when the residual has shrunk to this share of the right side. */
  readonly tolerance: number;
  readonly mostSteps: number;
}

/**
 * Conjugate gradients with diagonal scaling (Hestenes and Stiefel 1952, J. Res. Nat. Bur. Standards 49, 409-436), one
 * channel after the other, in place from the given start.
 * @param values `size`^3 rows of r g b: the start, overwritten with the solution
 */
export function solve(equations: NormalEquations, values: Float64Array, options: SolveOptions): void {
  const nodes = equations.size ** 3;
  const smoothness = options.smoothness * equations.meanWeight;
  const scale = scaling(equations, smoothness, nodes);
  for (let c = 0; c < 3; c++) {
    const x = Float64Array.from({ length: nodes }, (_, i) => values[3 * i + c]);
    const right = Float64Array.from({ length: nodes }, (_, i) => equations.right[3 * i + c]);
    solveChannel((p, out) => multiply(equations, smoothness, p, out), right, scale, x, options);
    for (let i = 0; i < nodes; i++) values[3 * i + c] = x[i];
  }
}

type Operator = (p: Float64Array, out: Float64Array) => void;

function solveChannel(
  apply: Operator,
  right: Float64Array,
  scale: Float64Array,
  x: Float64Array,
  { tolerance, mostSteps }: SolveOptions,
): void {
  const product = new Float64Array(x.length);
  apply(x, product);
  const residual = right.map((value, i) => value - product[i]);
  const scaled = residual.map((value, i) => value * scale[i]);
  const p = scaled.slice();
  const enough = tolerance * tolerance * dot(right, right);
  let progress = dot(residual, scaled);
  for (let step = 0; step < mostSteps && dot(residual, residual) > enough; step++) {
    apply(p, product);
    const length = progress / dot(p, product);
    for (let i = 0; i < x.length; i++) {
      x[i] += length * p[i];
      residual[i] -= length * product[i];
      scaled[i] = residual[i] * scale[i];
    }
    const next = dot(residual, scaled);
    const turn = next / progress;
    progress = next;
    for (let i = 0; i < x.length; i++) p[i] = scaled[i] + turn * p[i];
  }
}
