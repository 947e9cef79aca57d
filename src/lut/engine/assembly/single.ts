// All other pictures, in 32-bit floats. A node is r g b and a filler, so one load fetches it. The weights of the four
// corners add up to `full`: 65535 where a 16-bit code on a domain of 0..1 leaves a whole rest, 1 elsewhere.

import { high32, high64, low16, low32, low64 } from '../../../maths/assembly/lanes';
import {
  constant,
  corner1,
  corner2,
  nodesAt,
  setConstant,
  weight0,
  weight1,
  weight2,
  weight3,
} from './layout';

/** Bytes of a node. */
const nodeBytes: i32 = 16;

// Indices of constants; those below 16 belong to fixed.ts.
const last: usize = 16;
const full: usize = 17;
const overFull: usize = 18;
const greenNodes: usize = 19;
const blueNodes: usize = 20;
const redStep: usize = 21;
const greenStep: usize = 22;
const blueStep: usize = 23;
const redLast: usize = 24;
const greenLast: usize = 25;
const blueLast: usize = 26;
const whiteStep: usize = 36;
const wholeFloat: usize = 27;
const wholeBits: usize = 28;
const lastDouble: usize = 29;
const origin: usize = 30; // and 31, 32: red, green, blue
const scale: usize = 33; // and 34, 35

/** Added to a float below 2^22 either way, it leaves the number rounded to a whole one in the lowest 22 bits. */
const whole: f32 = 12582912.0; // 1.5 * 2^23
const wholeAsBits: i32 = 0x4b400000;

/**
 * Lays the nodes out, and behind them as many zeros as a cell beyond the last node could reach.
 * @param values size^3 rows of r g b, doubles
 * @param size 2..129
 * @param most what a value of 1 becomes, over `sum`
 * @param sum what the weights add up to
 */
export function prepareSingle(values: usize, size: i32, most: f64, sum: f64): void {
  const count = size * size * size;
  const white = 1 + size + size * size;
  let at = nodesAt;
  for (let node = 0; node < count; node++, values += 24, at += nodeBytes) {
    store<f32>(at, <f32>(most * load<f64>(values)));
    store<f32>(at, <f32>(most * load<f64>(values, 8)), 4);
    store<f32>(at, <f32>(most * load<f64>(values, 16)), 8);
    store<f32>(at, 0, 12);
  }
  memory.fill(at, 0, nodeBytes * white);
  setConstant(last, f32x4.splat(<f32>(size - 1)));
  setConstant(lastDouble, f64x2.splat(<f64>(size - 1)));
  setConstant(full, f32x4.splat(<f32>sum));
  setConstant(overFull, f32x4.splat(<f32>(1 / sum)));
  setConstant(greenNodes, f32x4.splat(<f32>size));
  setConstant(blueNodes, f32x4.splat(<f32>(size * size)));
  setConstant(redStep, i32x4.splat(nodeBytes));
  setConstant(greenStep, i32x4.splat(nodeBytes * size));
  setConstant(blueStep, i32x4.splat(nodeBytes * size * size));
  setConstant(redLast, i32x4.splat(nodeBytes * (white - 1)));
  setConstant(greenLast, i32x4.splat(nodeBytes * (white - size)));
  setConstant(blueLast, i32x4.splat(nodeBytes * (white - size * size)));
  setConstant(whiteStep, i32x4.splat(nodeBytes * white));
  setConstant(wholeFloat, f32x4.splat(whole));
  setConstant(wholeBits, i32x4.splat(wholeAsBits));
}

/** @param first, factor of a channel: (code - first) * factor is the place among the nodes, 0..size - 1 */
export function setDomain(channel: usize, first: f64, factor: f64): void {
  setConstant(origin + channel, f64x2.splat(first));
  setConstant(scale + channel, f64x2.splat(factor));
}

/**
 * First pass, into the work area: of each pixel the addresses of its first three corners (the last lies a fixed way off)
 * and the weights of all four. For 16-bit codes on a domain of 0..1: every number up to the weights is whole, so nothing
 * is rounded.
 */
export function findCorners16(from: usize, count: i32, stride: i32, work: usize): void {
  const most = constant(last);
  const share = constant(overFull);
  const sum = constant(full);
  for (let i = 0; i < count; i += 4, from += 4 * stride, work += 16) {
    const p01 = low16(v128.load64_zero(from), v128.load64_zero(from + stride));
    const p23 = low16(v128.load64_zero(from + 2 * stride), v128.load64_zero(from + 3 * stride));
    const rg = low32(p01, p23);
    const r = f32x4.mul(f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_u(rg)), most);
    const g = f32x4.mul(f32x4.convert_i32x4_s(i32x4.extend_high_i16x8_u(rg)), most);
    const b = f32x4.mul(f32x4.convert_i32x4_s(i32x4.extend_low_i16x8_u(high32(p01, p23))), most);
    const cellR = f32x4.floor(f32x4.mul(r, share));
    const cellG = f32x4.floor(f32x4.mul(g, share));
    const cellB = f32x4.floor(f32x4.mul(b, share));
    const restR = f32x4.sub(r, f32x4.mul(cellR, sum));
    const restG = f32x4.sub(g, f32x4.mul(cellG, sum));
    const restB = f32x4.sub(b, f32x4.mul(cellB, sum));
    storeCorners(cellR, cellG, cellB, restR, restG, restB, work);
  }
}

/** The same for any codes on any domain: their places among the nodes are found in doubles. */
export function findCorners<T>(from: usize, count: i32, stride: i32, work: usize): void {
  for (let i = 0; i < count; i += 4, from += 4 * stride, work += 16) {
    const p0 = loadPixel<T>(from);
    const p1 = loadPixel<T>(from + stride);
    const p2 = loadPixel<T>(from + 2 * stride);
    const p3 = loadPixel<T>(from + 3 * stride);
    const rg01 = low32(p0, p1);
    const rg23 = low32(p2, p3);
    const b0123 = low64(high32(p0, p1), high32(p2, p3));
    const r01 = place<T>(low64(rg01, rg01), 0);
    const r23 = place<T>(low64(rg23, rg23), 0);
    const g01 = place<T>(high64(rg01, rg01), 1);
    const g23 = place<T>(high64(rg23, rg23), 1);
    const b01 = place<T>(b0123, 2);
    const b23 = place<T>(high64(b0123, b0123), 2);
    storeCorners(
      singles(f64x2.floor(r01), f64x2.floor(r23)),
      singles(f64x2.floor(g01), f64x2.floor(g23)),
      singles(f64x2.floor(b01), f64x2.floor(b23)),
      singles(f64x2.sub(r01, f64x2.floor(r01)), f64x2.sub(r23, f64x2.floor(r23))),
      singles(f64x2.sub(g01, f64x2.floor(g01)), f64x2.sub(g23, f64x2.floor(g23))),
      singles(f64x2.sub(b01, f64x2.floor(b01)), f64x2.sub(b23, f64x2.floor(b23))),
      work,
    );
  }
}

/** The first channels of a pixel, 32 bits each. */
// @ts-ignore: decorator
@inline
function loadPixel<T>(from: usize): v128 {
  if (isFloat<T>()) return v128.load(from);
  if (sizeof<T>() == 2) return v128.load16x4_u(from);
  return i32x4.extend_low_i16x8_u(v128.load8x8_u(from));
}

/** Where two codes fall among the nodes; what is not a number falls on the first. */
// @ts-ignore: decorator
@inline
function place<T>(codes: v128, channel: usize): v128 {
  const code = isFloat<T>() ? f64x2.promote_low_f32x4(codes) : f64x2.convert_low_i32x4_s(codes);
  const at = f64x2.mul(f64x2.sub(code, constant(origin + channel)), constant(scale + channel));
  return f64x2.pmin(constant(lastDouble), f64x2.pmax(f64x2.splat(0), at));
}

// @ts-ignore: decorator
@inline
function singles(a: v128, b: v128): v128 {
  return low64(f32x4.demote_f64x2_zero(a), f32x4.demote_f64x2_zero(b));
}

// @ts-ignore: decorator
@inline
function storeCorners(
  cellR: v128,
  cellG: v128,
  cellB: v128,
  restR: v128,
  restG: v128,
  restB: v128,
  work: usize,
): void {
  const node = f32x4.add(
    f32x4.add(cellR, f32x4.mul(cellG, constant(greenNodes))),
    f32x4.mul(cellB, constant(blueNodes)),
  );
  const corner = i32x4.shl(i32x4.sub(f32x4.add(node, constant(wholeFloat)), constant(wholeBits)), 4);
  v128.store(work, corner);

  // The way from the dark corner to the light one goes along the largest rest first, along the smallest last. A step in
  // blue is the longest and one in red the shortest: of two steps, one of them masked, the larger is meant.
  const greenOverRed = f32x4.gt(restG, restR);
  const larger = f32x4.pmax(restR, restG);
  const smaller = f32x4.pmin(restR, restG);
  const first = i32x4.max_s(
    v128.and(f32x4.gt(restB, larger), constant(blueStep)),
    i32x4.max_s(v128.and(greenOverRed, constant(greenStep)), constant(redStep)),
  );
  v128.store(work, i32x4.add(corner, first), corner1);
  const second = i32x4.max_s(
    v128.and(
      f32x4.gt(restB, smaller),
      i32x4.max_s(v128.and(greenOverRed, constant(redLast)), constant(greenLast)),
    ),
    constant(blueLast),
  );
  v128.store(work, i32x4.add(corner, second), corner2);

  const high = f32x4.pmax(larger, restB);
  const middle = f32x4.pmax(smaller, f32x4.pmin(larger, restB));
  const low = f32x4.pmin(smaller, restB);
  v128.store(work, f32x4.sub(constant(full), high), weight0);
  v128.store(work, f32x4.sub(high, middle), weight1);
  v128.store(work, f32x4.sub(middle, low), weight2);
  v128.store(work, low, weight3);
}

/** Second pass: the weighted sums. Each pixel is stored with more bytes than r g b, which the next one writes over. */
export function blendCorners<T>(work: usize, to: usize, count: i32, stride: i32): void {
  const white = i32x4.extract_lane(constant(whiteStep), 0);
  for (let i = 0; i < count; i += 4, work += 16, to += 4 * stride) {
    const float = constant(wholeFloat);
    const bits = constant(wholeBits);
    storePixel<T>(to, blend(work, white), float, bits);
    storePixel<T>(to + stride, blend(work + 4, white), float, bits);
    storePixel<T>(to + 2 * stride, blend(work + 8, white), float, bits);
    storePixel<T>(to + 3 * stride, blend(work + 12, white), float, bits);
  }
}

// @ts-ignore: decorator
@inline
function blend(work: usize, white: i32): v128 {
  const corner = load<u32>(work);
  const c0 = f32x4.mul(v128.load(corner, nodesAt), v128.load32_splat(work, weight0));
  const c3 = f32x4.mul(v128.load(corner + white, nodesAt), v128.load32_splat(work, weight3));
  const c1 = f32x4.mul(v128.load(load<u32>(work, corner1), nodesAt), v128.load32_splat(work, weight1));
  const c2 = f32x4.mul(v128.load(load<u32>(work, corner2), nodesAt), v128.load32_splat(work, weight2));
  return f32x4.add(f32x4.add(c0, c1), f32x4.add(c2, c3));
}

// @ts-ignore: decorator
@inline
function storePixel<T>(to: usize, value: v128, float: v128, bits: v128): void {
  if (isFloat<T>()) {
    v128.store(to, value);
    return;
  }
  const codes = i32x4.sub(f32x4.add(value, float), bits);
  const words = i16x8.narrow_i32x4_u(codes, codes);
  if (sizeof<T>() == 2) v128.store_lane<i64>(to, words, 0);
  else v128.store_lane<i32>(to, i8x16.narrow_i16x8_u(words, words), 0);
}
