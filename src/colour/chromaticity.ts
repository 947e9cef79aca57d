import type { Triple } from '../maths/matrix3.js';
import { planck } from './illuminants/planck.js';
import { xyzOf } from './observer.js';

/** CIE 1931 x y of XYZ at any scale; NaN for black. */
export function xyOfXyz([x, y, z]: Triple): readonly [number, number] {
  const sum = x + y + z;
  return [x / sum, y / sum];
}

/** XYZ of a chromaticity, y not 0. @param luminance the Y wanted */
export function xyzOfXy([x, y]: readonly [number, number], luminance = 1): Triple {
  return [(luminance * x) / y, luminance, (luminance * (1 - x - y)) / y];
}

/** CIE 1976 u' v' of XYZ at any scale (ISO/CIE 11664-5:2016); NaN for black. */
export function uvPrimeOfXyz([x, y, z]: Triple): readonly [number, number] {
  const sum = x + 15 * y + 3 * z;
  return [(4 * x) / sum, (9 * y) / sum];
}

/** CIE 1960 u v of XYZ at any scale: the plane in which colour temperatures are correlated; NaN for black. */
export function uv1960OfXyz(xyz: Triple): readonly [number, number] {
  const [u, v] = uvPrimeOfXyz(xyz);
  return [u, (2 * v) / 3];
}

/** Planck's locus in CIE 1960 u v, by reciprocal temperature in mired (1e6 / kelvin). */
const planckUv = (mired: number) => uv1960OfXyz(xyzOf(planck(1e6 / mired)));

const hottestMired = 1;
const coldestMired = 1000;
const scanSteps = 60;

/** The place of a minimum between two bounds, by golden section. @param f with one minimum between them */
function minimumBetween(f: (x: number) => number, low: number, high: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [inner, outer] = [high - golden * (high - low), low + golden * (high - low)];
  let [fInner, fOuter] = [f(inner), f(outer)];
  for (let step = 0; step < 60; step++) {
    if (fInner < fOuter) {
      [high, outer, fOuter] = [outer, inner, fInner];
      inner = high - golden * (high - low);
      fInner = f(inner);
    } else {
      [low, inner, fInner] = [inner, outer, fOuter];
      outer = low + golden * (high - low);
      fOuter = f(outer);
    }
  }
  return (low + high) / 2;
}

/**
 * The temperature of the Planck radiator nearest in CIE 1960 u v, and the distance from it (CIE 15:2004, section 9.5;
 * the sign of the distance as in Ohno 2014, LEUKOS 10, 47-55). The locus is summed over the same grid as every
 * other colour here. Beyond a distance of 0.05 the temperature says nothing.
 * @param xyz at any scale
 * @returns kelvin within 1000..1e6; duv positive above the locus (greenish), negative below (pinkish); NaN for black
 */
export function correlatedColourTemperature(xyz: Triple): { kelvin: number; duv: number } {
  const [u, v] = uv1960OfXyz(xyz);
  if (!Number.isFinite(u) || !Number.isFinite(v)) return { kelvin: NaN, duv: NaN };
  const distance = (mired: number) => {
    const [locusU, locusV] = planckUv(mired);
    return Math.hypot(u - locusU, v - locusV);
  };
  // The distance may have more than one minimum far from the locus, so the deepest is found by a scan first.
  const step = (coldestMired - hottestMired) / scanSteps;
  const scan = Array.from({ length: scanSteps + 1 }, (_, i) => distance(hottestMired + i * step));
  const nearest = hottestMired + scan.indexOf(Math.min(...scan)) * step;
  const low = Math.max(hottestMired, nearest - step);
  const mired = minimumBetween(distance, low, Math.min(coldestMired, nearest + step));
  return { kelvin: 1e6 / mired, duv: distance(mired) * (v < planckUv(mired)[1] ? -1 : 1) };
}
