import type { Run } from '../maths/matrix3.js';
import type { Picture } from '../picture/picture.js';
import { lastCode } from '../picture/picture.js';
import type { Blocks } from './blocks.js';
import { plainMeans } from './blocks.js';
import { border, samplePixels } from './sample.js';

/** A smooth change of colour that was fitted, not given. */
export type ColourMap = Run;

/** Products of red, green and blue up to the third degree: one, 3 + 6 + 10. */
const terms = 20;

function products(r: number, g: number, b: number, out: Float64Array): void {
  out[0] = 1;
  out[1] = r;
  out[2] = g;
  out[3] = b;
  out[4] = r * r;
  out[5] = g * g;
  out[6] = b * b;
  out[7] = r * g;
  out[8] = g * b;
  out[9] = b * r;
  for (let k = 0; k < 6; k++) out[10 + k] = r * out[4 + k];
  out[16] = g * g * g;
  out[17] = g * g * b;
  out[18] = g * b * b;
  out[19] = b * b * b;
}

/** Sums of the least squares: colours in, colours out. */
class ColourFit {
  readonly #normal = new Float64Array(terms * terms);
  readonly #right = new Float64Array(terms * 3);
  readonly #row = new Float64Array(terms);
  #count = 0;

  add(from: Float64Array, fromAt: number, to: Float64Array, toAt: number): void {
    products(from[fromAt], from[fromAt + 1], from[fromAt + 2], this.#row);
    this.#count++;
    for (let k = 0; k < terms; k++) {
      for (let l = 0; l < terms; l++) this.#normal[k * terms + l] += this.#row[k] * this.#row[l];
      for (let c = 0; c < 3; c++) this.#right[3 * k + c] += this.#row[k] * to[toAt + c];
    }
  }

  /** The fitted map; held a little towards nothing, so that colours that are missing do no harm. */
  map(): ColourMap {
    const held = this.#normal.slice();
    for (let k = 0; k < terms; k++) held[k * terms + k] += 1e-9 * (this.#count + 1);
    const factors = solveSymmetric(held, this.#right.slice());
    const row = this.#row;
    return (values, count) => {
      for (let i = 0; i < 3 * count; i += 3) {
        products(values[i], values[i + 1], values[i + 2], row);
        for (let c = 0; c < 3; c++) {
          let sum = 0;
          for (let k = 0; k < terms; k++) sum += factors[3 * k + c] * row[k];
          values[i + c] = sum;
        }
      }
    };
  }
}

/** Cholesky's method for three right sides at once; both arrays are overwritten. */
function solveSymmetric(a: Float64Array, right: Float64Array): Float64Array {
  for (let i = 0; i < terms; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = a[i * terms + j];
      for (let k = 0; k < j; k++) sum -= a[i * terms + k] * a[j * terms + k];
      a[i * terms + j] = i === j ? Math.sqrt(sum) : sum / a[j * terms + j];
    }
    for (let c = 0; c < 3; c++) {
      let sum = right[3 * i + c];
      for (let k = 0; k < i; k++) sum -= a[i * terms + k] * right[3 * k + c];
      right[3 * i + c] = sum / a[i * terms + i];
    }
  }
  for (let i = terms - 1; i >= 0; i--)
    for (let c = 0; c < 3; c++) {
      let sum = right[3 * i + c];
      for (let k = i + 1; k < terms; k++) sum -= a[k * terms + i] * right[3 * k + c];
      right[3 * i + c] = sum / a[i * terms + i];
    }
  return right;
}

/** Pixels that are enough for the fit. */
const fitted = 20_000;

/** Fits the colours of the plain still, looked up `dx, dy` pixels away, to those of the burnt one. */
export function fitColourMap(plain: Picture, burnt: Picture, dx: number, dy: number): ColourMap {
  const [width, height] = [burnt.width - 2 * border, burnt.height - 2 * border];
  const step = Math.max(1, Math.round(Math.sqrt((width * height) / fitted)));
  const fit = new ColourFit();
  const from = new Float64Array(3);
  const to = new Float64Array(3);
  for (let y = border; y < border + height; y += step)
    for (let x = border; x < border + width; x += step) {
      samplePixels(plain, x + dx, y + dy, 1, from);
      const at = (y * burnt.width + x) * burnt.channels;
      for (let c = 0; c < 3; c++) to[c] = burnt.data[at + c] / lastCode(burnt.bits);
      fit.add(from, 0, to, 0);
    }
  return fit.map();
}

/** Fits the means of the blocks: the best that any smooth change of colour could do. */
export function fitBlocks(blocks: Blocks): ColourMap {
  const fit = new ColourFit();
  const from = plainMeans(blocks);
  for (let i = 0; i < from.length; i += 3) fit.add(from, i, blocks.burnt, i);
  return fit.map();
}
