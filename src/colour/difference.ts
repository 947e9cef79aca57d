import type { Triple } from '../maths/matrix3.js';

/** CIELAB's linear part near black, in its exact form (ISO/CIE 11664-4:2019). */
const epsilon = 216 / 24389;
const kappa = 24389 / 27;

const lightnessRoot = (t: number) => (t > epsilon ? Math.cbrt(t) : (kappa * t + 16) / 116);

/** XYZ to CIELAB for `count` colours in place: x y z x y z ... */
export function labRun(xyz: Float64Array, count: number, white: Triple): void {
  for (let i = 0; i < 3 * count; i += 3) {
    const fx = lightnessRoot(xyz[i] / white[0]);
    const fy = lightnessRoot(xyz[i + 1] / white[1]);
    const fz = lightnessRoot(xyz[i + 2] / white[2]);
    xyz[i] = 116 * fy - 16;
    xyz[i + 1] = 500 * (fx - fy);
    xyz[i + 2] = 200 * (fy - fz);
  }
}

/** CIELAB of XYZ (ISO/CIE 11664-4:2019). @param xyz @param white at the same scale @returns L* 0..100, a*, b* */
export function labOfXyz(xyz: Triple, white: Triple): Triple {
  const lab = Float64Array.from(xyz);
  labRun(lab, 1, white);
  return [lab[0], lab[1], lab[2]];
}

const turn = 2 * Math.PI;
const radians = (degrees: number) => (degrees * Math.PI) / 180;
const [deg6, deg30, deg63, deg275, deg25] = [6, 30, 63, 275, 25].map(radians);

/** sqrt(c^7 / (c^7 + 25^7)): 0 for greys, towards 1 for strong colours. */
function chromaWeight(c: number): number {
  const ratio = c / 25;
  const square = ratio * ratio;
  // Multiplied out: `ratio ** 7` alone would take half the time of a difference.
  const c7 = square * square * square * ratio;
  // A chroma so strong that its power overflows has the limit.
  return c7 === Infinity ? 1 : Math.sqrt(c7 / (c7 + 1));
}

/** Hue angle 0..2 pi; 0 for a grey, as the formula has it. */
function hue(a: number, b: number): number {
  const angle = Math.atan2(b, a);
  return angle < 0 ? angle + turn : angle;
}

/** From one hue to another the short way round. @param far whether they lie more than half a turn apart */
function hueStep(h1: number, h2: number, far: boolean): number {
  const step = h2 - h1;
  return far ? step + (step > 0 ? -turn : turn) : step;
}

/** The hue in the middle of the short way. */
function meanHue(h1: number, h2: number, far: boolean): number {
  const sum = h1 + h2;
  return (far ? sum + (sum < turn ? turn : -turn) : sum) / 2;
}

/** The formula's T: how much a difference of hue counts at a hue. */
const hueWeight = (h: number): number =>
  1 -
  0.17 * Math.cos(h - deg30) +
  0.24 * Math.cos(2 * h) +
  0.32 * Math.cos(3 * h + deg6) -
  0.2 * Math.cos(4 * h - deg63);

/** The formula's angle of rotation: up to 30 degrees about blue, nothing elsewhere. */
function blueTurn(h: number): number {
  const fromBlue = (h - deg275) / deg25;
  return deg30 * Math.exp(-fromBlue * fromBlue);
}

/** CIEDE2000 of two CIELAB colours as six numbers; see `ciede2000`. */
function difference(l1: number, a1: number, b1: number, l2: number, a2: number, b2: number): number {
  const meanChroma = (Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2;
  const stretch = 1 + 0.5 * (1 - chromaWeight(meanChroma));
  const x1 = stretch * a1;
  const x2 = stretch * a2;
  const c1 = Math.sqrt(x1 * x1 + b1 * b1);
  const c2 = Math.sqrt(x2 * x2 + b2 * b2);
  const c = (c1 + c2) / 2;
  const h1 = hue(x1, b1);
  const h2 = hue(x2, b2);

  // Whether the hues lie more than half a turn apart is asked of the cross product, whose sign is that of the sine
  // of the angle between them: for exactly opposite hues it is 0, where a difference of two rounded angles is not pi.
  const cross = x1 * b2 - b1 * x2;
  const far = h2 > h1 ? cross < 0 : cross > 0;
  const grey = c1 * c2 === 0;
  const deltaHue = grey ? 0 : hueStep(h1, h2, far);
  const h = grey ? h1 + h2 : meanHue(h1, h2, far);

  const fromMiddle = ((l1 + l2) / 2 - 50) ** 2;
  const weightL = 1 + (0.015 * fromMiddle) / Math.sqrt(20 + fromMiddle);
  const deltaL = (l2 - l1) / weightL;
  const deltaC = (c2 - c1) / (1 + 0.045 * c);
  const deltaH = (2 * Math.sqrt(c1 * c2) * Math.sin(deltaHue / 2)) / (1 + 0.015 * c * hueWeight(h));
  const rotation = -Math.sin(2 * blueTurn(h)) * 2 * chromaWeight(c);
  const square = deltaL * deltaL + deltaC * deltaC + deltaH * deltaH + rotation * deltaC * deltaH;
  return Math.sqrt(Math.max(0, square));
}

/**
 * The colour difference CIEDE2000 with weights 1 1 1 (ISO/CIE 11664-6:2022; Sharma, Wu and Dalal 2005, Color Res. Appl. 30, 21-30).
 * @param a CIELAB @param b CIELAB @returns 0 for equal colours, about 1 where a difference begins to show
 */
export function ciede2000(a: Triple, b: Triple): number {
  return difference(a[0], a[1], a[2], b[0], b[1], b[2]);
}

/** CIEDE2000 of `count` pairs. @param a CIELAB L a b L a b ... @param b the same @param out one difference a pair */
export function ciede2000Run(a: Float64Array, b: Float64Array, count: number, out: Float64Array): void {
  for (let i = 0, j = 0; i < count; i++, j += 3)
    out[i] = difference(a[j], a[j + 1], a[j + 2], b[j], b[j + 1], b[j + 2]);
}
