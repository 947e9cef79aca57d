import { invert3, multiply3, transform3, type Matrix3, type Triple } from '../../../../src/maths/matrix3.js';
import { cie1931 } from '../../../../shared/tables/cie-1931-observer.js';
import { curve, dot, onGrid, skewBell, times, type Between, type Curve } from './grid.js';
import { testColourSamples } from './reflectances.js';

/** Sensitivities of a camera's three channels. */
export type Sensitivities = readonly [Curve, Curve, Curve];

const infraredCut = (nm: number, at: number): number => 1 / (1 + Math.exp((nm - at) / 9));

/** Skewed bells with leakage between the channels. */
export function bellCamera(between: Between): Sensitivities {
  const cut = between(672, 700);
  const [red, green, blue] = [between(592, 612), between(522, 540), between(448, 464)];
  const leak = () => between(0.03, 0.1);
  const [a, b, c, d] = [leak(), leak(), leak(), leak()];
  return [
    curve((w) => infraredCut(w, cut) * (skewBell(w, red, 28, 45) + a * skewBell(w, green, 40, 40))),
    curve(
      (w) =>
        infraredCut(w, cut) *
        (skewBell(w, green, 36, 40) + b * skewBell(w, 600, 50, 50) + c * skewBell(w, 460, 40, 40)),
    ),
    curve((w) => infraredCut(w, cut) * (skewBell(w, blue, 30, 32) + d * skewBell(w, green, 40, 40))),
  ];
}

const [xbar, ybar, zbar] = [onGrid(cie1931.xbar), onGrid(cie1931.ybar), onGrid(cie1931.zbar)];

/** The observer's curves mixed, shifted and rippled by a filter stack: near to colour-matching, but not it. */
export function rippledCamera(between: Between): Sensitivities {
  const cut = between(665, 690);
  const [period, depth, phase] = [between(28, 60), between(0.03, 0.1), between(0, 6)];
  const shift = between(-6, 6);
  const mix = [
    [1.1 + between(-0.15, 0.15), between(-0.15, 0.1), between(-0.05, 0.02)],
    [between(-0.35, -0.2), 1.25 + between(-0.1, 0.1), between(0, 0.08)],
    [between(0, 0.03), between(0, 0.06), 0.6 + between(-0.05, 0.05)],
  ];
  const ripple = curve((w) => (1 + depth * Math.sin(w / period + phase)) * infraredCut(w, cut));
  const at = (values: Curve, w: number) => {
    const i = Math.min(69.999, Math.max(0, (w - 380) / 5));
    return values[Math.floor(i)] + (i % 1) * (values[Math.floor(i) + 1] - values[Math.floor(i)]);
  };
  return mix.map((m) =>
    times(
      ripple,
      curve((w) =>
        Math.max(0, m[0] * at(xbar, w + shift) + m[1] * at(ybar, w + shift) + m[2] * at(zbar, w + shift)),
      ),
    ),
  ) as unknown as Sensitivities;
}

/** Linear BT.709 to XYZ with D65 as white. Source: ITU-R BT.709-6 chromaticities (matrix from memory, 4 digits). */
const bt709: Matrix3 = [0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505];
/** Bradford cone responses (ICC.1, annex E). */
const bradford: Matrix3 = [0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296];

const xyzOf = (power: Curve): Triple => [dot(power, xbar), dot(power, ybar), dot(power, zbar)];

/** What a perfect camera would write under the light: linear BT.709, the light itself as 1 1 1. */
function perfectRgb(light: Curve): (power: Curve) => Triple {
  const cone = transform3(bradford, xyzOf(light));
  const white = transform3(bradford, transform3(bt709, [1, 1, 1]));
  const toRgb = multiply3(invert3(bt709), invert3(bradford));
  return (power) => {
    const c = transform3(bradford, xyzOf(power));
    return transform3(toRgb, [
      (c[0] / cone[0]) * white[0],
      (c[1] / cone[1]) * white[1],
      (c[2] / cone[2]) * white[2],
    ]);
  };
}

/** Least squares for three unknowns with the sum of the row held at 1, so that white stays white. */
function fitRow(raw: readonly Triple[], wanted: readonly number[]): Triple {
  // with the third coefficient = 1 - a - b two unknowns remain
  let [paa, pab, pbb, qa, qb] = [1e-9, 0, 1e-9, 0, 0];
  raw.forEach(([r, g, b], i) => {
    const [u, v, t] = [r - b, g - b, wanted[i] - b];
    paa += u * u;
    pab += u * v;
    pbb += v * v;
    qa += u * t;
    qb += v * t;
  });
  const det = paa * pbb - pab * pab;
  const [a, b] = [(qa * pbb - qb * pab) / det, (paa * qb - pab * qa) / det];
  return [a, b, 1 - a - b];
}

/**
 * The linear camera: spectrum after the gate -> linear BT.709, the open gate as 1 1 1, with a matrix fitted to
 * the published samples under the same light.
 */
export function cameraOf(
  sensitivities: Sensitivities,
  light: Curve,
): { channels: Sensitivities; matrix: Matrix3 } {
  const weighted = sensitivities.map((s) => {
    const product = times(s, light);
    const sum = product.reduce((a, b) => a + b, 0);
    return product.map((v) => v / sum);
  }) as unknown as Sensitivities;
  const wantedOf = perfectRgb(light);
  const samples = Object.values(testColourSamples).map((values) => onGrid(values));
  const raw = samples.map((s) => weighted.map((channel) => dot(channel, s)) as unknown as Triple);
  const wanted = samples.map((s) => wantedOf(times(s, light)));
  const rows = [0, 1, 2].map((k) =>
    fitRow(
      raw,
      wanted.map((w) => w[k]),
    ),
  );
  return { channels: weighted, matrix: rows.flat() as unknown as Matrix3 };
}
