import { transform3, type Matrix3, type Triple } from '../../../../src/maths/matrix3.js';
import { normalRandom, seededRandom } from '../../../../src/maths/random.js';
import type { Sensitivities } from './cameras.js';
import { cie1931 } from '../../../../shared/tables/cie-1931-observer.js';
import { curve, dot, onGrid, times, type Curve } from './grid.js';
import { planck } from './lights.js';
import type { Painting } from './paint.js';
import type { Stock } from './stocks.js';

const observer = [cie1931.xbar, cie1931.ybar, cie1931.zbar].map((values) => onGrid(values));

/** What time did: shares of dye lost, stain, and how much a dye's loss leans on the density of its neighbours. */
export interface Fade {
  readonly loss: Triple;
  readonly stain: number;
  readonly leaning: number;
}

export interface Scanner {
  readonly channels: Sensitivities;
  readonly matrix: Matrix3;
  /** Gains of the camera's channels: the error of its white balance. */
  readonly gains: Triple;
  /** Linear level of the light without film. */
  readonly openGate: number;
  /** Stray light as a share of the open gate: constant, and in proportion to the picture's mean. */
  readonly flare: number;
  readonly veil: number;
  readonly readNoise: number;
  readonly shotNoise: number;
}

/** Amounts of the dyes that the eye sees as a neutral of density 1 under 5000 K, off by the stock's own balance. */
function neutralAmounts(stock: Stock): Triple {
  const light = planck(5000);
  const bands = observer.map((band) => times(light, band));
  const white = bands.map((band) => band.reduce((a, b) => a + b, 0));
  const amounts: number[] = [1, 1, 1];
  for (let step = 0; step < 60; step++) {
    const t = curve(
      (w) => 10 ** -stock.dyes.reduce((sum, dye, k) => sum + amounts[k] * dye[(w - 380) / 5], 0),
    );
    bands.forEach((band, k) => (amounts[k] += 0.7 * (1 + Math.log10(dot(band, t) / white[k]))));
  }
  return amounts.map((a, k) => a * stock.balance[k]) as unknown as Triple;
}

/** Amounts of dye in the developed film, grain included; `kind`: 1 = unexposed film, 2 = no film at all there. */
export interface Film {
  readonly width: number;
  readonly height: number;
  readonly amounts: Float64Array;
  readonly noFilm: Uint8Array;
}

/** The edge that a scan shows beside and above the picture: unexposed film with a perforation in it. */
const edge = { side: 0.09, line: 0.035, hole: { x: 0.015, y: 0.36, w: 0.055, h: 0.28 } };
/** Rectangles of the edge, in shares of the frame: for marks. */
export const edgeMarks = {
  black: { x: 0.02, y: 0.08, w: 0.05, h: 0.15 },
  clear: { x: 0.025, y: 0.42, w: 0.035, h: 0.16 },
};

export function develop(
  painting: Painting,
  stock: Stock,
  options: { seed: number; edge: boolean; grain: number },
): Film {
  const { width, height, exposures } = painting;
  const random = seededRandom(options.seed);
  const amounts = new Float64Array(exposures.length);
  const noFilm = new Uint8Array(width * height);
  const unit = neutralAmounts(stock);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [((i % width) + 0.5) / width, (Math.floor(i / width) + 0.5) / height];
    const { hole } = edge;
    const outside = options.edge && (x < edge.side || y < edge.line || y > 1 - edge.line);
    noFilm[i] = Number(outside && x > hole.x && x < hole.x + hole.w && y > hole.y && y < hole.y + hole.h);
    const d = [0, 1, 2].map((k) =>
      outside ? stock.densest[k] : stock.density(k, Math.log10(Math.max(1e-6, exposures[3 * i + k]))),
    );
    const mean = (d[0] + d[1] + d[2]) / 3;
    for (let k = 0; k < 3; k++) {
      const inhibited =
        d[k] +
        stock.interimage * (d[k] - mean) * Math.min(1, 2 * d[k]) * Math.max(0, 1 - mean / stock.densest[k]);
      const grain = options.grain * Math.sqrt(Math.max(0.1, d[k])) * normalRandom(random);
      amounts[3 * i + k] = unit[k] * Math.max(0, inhibited + grain);
    }
  }
  return { width, height, amounts, noFilm };
}

/** Linear BT.709 of the camera, noise-free, open gate at its level, not clipped. */
export function scan(film: Film, stock: Stock, fade: Fade, scanner: Scanner): Float64Array {
  const out = new Float64Array(film.amounts.length);
  const stain = curve((w) => fade.stain * (Math.exp(-(w - 400) / 75) + 0.1));
  const dyes = stock.dyes.map((dye) => dye.map((v) => v * Math.LN10));
  const base: Curve = stock.base.map((v, i) => (v + stain[i]) * Math.LN10);
  const [s0, s1, s2] = scanner.channels;
  const [d0, d1, d2] = dyes;
  const mean = [0, 0, 0];
  for (let p = 0; p < out.length; p += 3) {
    if (film.noFilm[p / 3] === 1) {
      out.fill(1, p, p + 3);
    } else {
      const [c0, m0, y0] = [film.amounts[p], film.amounts[p + 1], film.amounts[p + 2]];
      const c = c0 * (1 - fade.loss[0] * (1 - (fade.leaning * m0) / (1 + m0)));
      const m = m0 * (1 - fade.loss[1] * (1 - (fade.leaning * c0) / (1 + c0)));
      const y = y0 * (1 - fade.loss[2]);
      let [r, g, b] = [0, 0, 0];
      for (let i = 0; i < base.length; i++) {
        const t = Math.exp(-(base[i] + c * d0[i] + m * d1[i] + y * d2[i]));
        r += s0[i] * t;
        g += s1[i] * t;
        b += s2[i] * t;
      }
      [out[p], out[p + 1], out[p + 2]] = [r, g, b];
    }
    for (let k = 0; k < 3; k++) mean[k] += (3 * out[p + k]) / out.length;
  }
  const { gains, openGate, flare, veil, matrix } = scanner;
  for (let p = 0; p < out.length; p += 3) {
    const raw = [0, 1, 2].map((k) => (gains[k] * (out[p + k] + flare + veil * mean[k])) / (1 + flare + veil));
    const rgb = transform3(matrix, raw as unknown as Triple);
    for (let k = 0; k < 3; k++) out[p + k] = openGate * rgb[k];
  }
  return out;
}

/** Code values as a file holds them: noise, clipping, encoding, rounding. */
export function write(
  linear: Float64Array,
  scanner: Scanner,
  options: { bits: 8 | 16; encode: (light: number) => number; seed: number },
): Uint8Array | Uint16Array {
  const random = seededRandom(options.seed);
  const top = options.bits === 8 ? 255 : 65535;
  const data = options.bits === 8 ? new Uint8Array(linear.length) : new Uint16Array(linear.length);
  linear.forEach((light, i) => {
    const noise =
      normalRandom(random) * Math.hypot(scanner.readNoise, scanner.shotNoise * Math.sqrt(Math.max(0, light)));
    data[i] = Math.round(top * options.encode(Math.min(1, Math.max(0, light + noise))));
  });
  return data;
}
