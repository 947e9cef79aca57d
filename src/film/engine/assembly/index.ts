// The film model's inner loops: light through three dyes, summed over the spectrum, two wavelengths at once. Compiled by
// the build to WebAssembly with 128-bit SIMD. Operation for operation what ../../dye-model.ts does, so that both give the
// same to the last bit. It knows addresses and nothing else: see ../simd-dye-model.ts.

/** Bytes of a curve: 36 pairs of wavelengths. Six of them follow one another: cyan magenta yellow, red green blue. */
const curveBytes: usize = 16 * 36;

/** Vectors that the loops read in every turn: a literal would be built anew each time, which takes longer. */
const constants: usize = 1024;
const cyan: usize = constants;
const magenta: usize = constants + 16;
const yellow: usize = constants + 32;
const one: usize = constants + 48;
const slope: usize = constants + 64;
const curve: usize = constants + 80;
const rounder: usize = constants + 96;

/** What was reckoned: red green blue, then their slopes by amount row by row. */
const result: usize = 2048;

/** The dyes' transmittance at each wavelength. */
const through: usize = 3072;

/** 2^(0 / 2048), 2^(1 / 2048), ..., less the step itself where the exponent lies: {@link power} adds it again. */
const powers: usize = 8192;
const steps: i32 = 2048;

/** By so much a whole number, as the rounder leaves it, is shifted for its octaves to lie where the exponent does. */
const toExponent: i32 = 41;

/** Addresses for the caller: of the result, of the powers, and from where on memory is free. */
export const resultAt: i32 = <i32>result;
export const powersAt: i32 = <i32>powers;
export const freeAt: i32 = <i32>powers + 8 * steps;

/** Makes ready, once the powers lie at their place. */
export function prepare(slopeOfRest: f64, curveOfRest: f64): void {
  for (let step = 0; step < steps; step++) {
    const at = powers + 8 * step;
    store<u64>(at, load<u64>(at) - ((<u64>step) << toExponent));
  }
  v128.store(one, f64x2.splat(1));
  v128.store(slope, f64x2.splat(slopeOfRest));
  v128.store(curve, f64x2.splat(curveOfRest));
  v128.store(rounder, f64x2.splat(6755399441055744));
}

/** Red green blue behind amounts of dye. @param curves address of the six */
export function light(curves: usize, c: f64, m: f64, y: f64): void {
  setAmounts(c, m, y);
  let red = f64x2.splat(0);
  let green = f64x2.splat(0);
  let blue = f64x2.splat(0);
  for (let at = curves; at < curves + curveBytes; at += 32) {
    const t0 = power(v128.load(at), v128.load(at, curveBytes), v128.load(at, 2 * curveBytes));
    const t1 = power(v128.load(at, 16), v128.load(at, curveBytes + 16), v128.load(at, 2 * curveBytes + 16));
    red = f64x2.add(f64x2.add(red, weighted(t0, at, 3 * curveBytes)), weighted(t1, at, 3 * curveBytes + 16));
    green = f64x2.add(f64x2.add(green, weighted(t0, at, 4 * curveBytes)), weighted(t1, at, 4 * curveBytes + 16));
    blue = f64x2.add(f64x2.add(blue, weighted(t0, at, 5 * curveBytes)), weighted(t1, at, 5 * curveBytes + 16));
  }
  storeSum(0, red);
  storeSum(1, green);
  storeSum(2, blue);
}

/** The same with its slopes, in two loops: all twelve sums at once would be more than a processor holds. */
export function lightAndSlopes(curves: usize, c: f64, m: f64, y: f64): void {
  setAmounts(c, m, y);
  throughAndBlue(curves);
  redAndGreen(curves);
}

function throughAndBlue(curves: usize): void {
  let blue = f64x2.splat(0);
  let byCyan = f64x2.splat(0);
  let byMagenta = f64x2.splat(0);
  let byYellow = f64x2.splat(0);
  for (let i: usize = 0; i < curveBytes; i += 16) {
    const at = curves + i;
    const c = v128.load(at);
    const m = v128.load(at, curveBytes);
    const y = v128.load(at, 2 * curveBytes);
    const t = power(c, m, y);
    v128.store(through + i, t);
    const part = weighted(t, at, 5 * curveBytes);
    blue = f64x2.add(blue, part);
    byCyan = f64x2.add(byCyan, f64x2.mul(part, c));
    byMagenta = f64x2.add(byMagenta, f64x2.mul(part, m));
    byYellow = f64x2.add(byYellow, f64x2.mul(part, y));
  }
  storeSum(2, blue);
  storeSlopes(2, byCyan, byMagenta, byYellow);
}

function redAndGreen(curves: usize): void {
  let red = f64x2.splat(0);
  let redByCyan = f64x2.splat(0);
  let redByMagenta = f64x2.splat(0);
  let redByYellow = f64x2.splat(0);
  let green = f64x2.splat(0);
  let greenByCyan = f64x2.splat(0);
  let greenByMagenta = f64x2.splat(0);
  let greenByYellow = f64x2.splat(0);
  for (let i: usize = 0; i < curveBytes; i += 16) {
    const at = curves + i;
    const t = v128.load(through + i);
    const partRed = weighted(t, at, 3 * curveBytes);
    const partGreen = weighted(t, at, 4 * curveBytes);
    red = f64x2.add(red, partRed);
    green = f64x2.add(green, partGreen);
    redByCyan = f64x2.add(redByCyan, weighted(partRed, at, 0));
    greenByCyan = f64x2.add(greenByCyan, weighted(partGreen, at, 0));
    redByMagenta = f64x2.add(redByMagenta, weighted(partRed, at, curveBytes));
    greenByMagenta = f64x2.add(greenByMagenta, weighted(partGreen, at, curveBytes));
    redByYellow = f64x2.add(redByYellow, weighted(partRed, at, 2 * curveBytes));
    greenByYellow = f64x2.add(greenByYellow, weighted(partGreen, at, 2 * curveBytes));
  }
  storeSum(0, red);
  storeSlopes(0, redByCyan, redByMagenta, redByYellow);
  storeSum(1, green);
  storeSlopes(1, greenByCyan, greenByMagenta, greenByYellow);
}

// @ts-ignore: decorator
@inline
function setAmounts(c: f64, m: f64, y: f64): void {
  v128.store(cyan, f64x2.splat(c));
  v128.store(magenta, f64x2.splat(m));
  v128.store(yellow, f64x2.splat(y));
}

/** Transmittance of two wavelengths: `powerOfSteps` of what the amounts take from them. */
// @ts-ignore: decorator
@inline
function power(c: v128, m: v128, y: v128): v128 {
  const taken = f64x2.add(
    f64x2.add(f64x2.mul(v128.load(cyan), c), f64x2.mul(v128.load(magenta), m)),
    f64x2.mul(v128.load(yellow), y),
  );
  const rounded = f64x2.add(taken, v128.load(rounder));
  const rest = f64x2.sub(taken, f64x2.sub(rounded, v128.load(rounder)));
  const first = load64At(<usize>i32x4.extract_lane(rounded, 0));
  const both = v128.load64_lane(powerAt(<usize>i32x4.extract_lane(rounded, 2)), first, 1, powers);
  const series = f64x2.add(
    v128.load(one),
    f64x2.mul(rest, f64x2.add(v128.load(slope), f64x2.mul(rest, v128.load(curve)))),
  );
  return f64x2.mul(i64x2.add(both, i64x2.shl(rounded, toExponent)), series);
}

// @ts-ignore: decorator
@inline
function powerAt(step: usize): usize {
  return (step & (steps - 1)) << 3;
}

// @ts-ignore: decorator
@inline
function load64At(step: usize): v128 {
  return v128.load64_zero(powerAt(step), powers);
}

// @ts-ignore: decorator
@inline
function weighted(value: v128, at: usize, offset: usize): v128 {
  return f64x2.mul(value, v128.load(at + offset));
}

// @ts-ignore: decorator
@inline
function storeSum(place: usize, sum: v128): void {
  store<f64>(result + 8 * place, f64x2.extract_lane(sum, 0) + f64x2.extract_lane(sum, 1));
}

// @ts-ignore: decorator
@inline
function storeSlopes(channel: usize, byCyan: v128, byMagenta: v128, byYellow: v128): void {
  storeSum(3 + 3 * channel, byCyan);
  storeSum(4 + 3 * channel, byMagenta);
  storeSum(5 + 3 * channel, byYellow);
}
