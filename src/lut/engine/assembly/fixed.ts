// 8-bit pictures on a domain of 0..1, in 16-bit whole numbers. A code times (size - 1) over 255 leaves a remainder of
// 0..255, so the weights of the four corners are whole numbers that add up to 255, exactly. Each node is stored three
// times, once a direction, side by side with its neighbour in that direction: two loads and two multiply-adds a pixel.

import { high16, high32, high64, low16, low32, low64 } from '../../../maths/assembly/lanes';
import { constant, corner1, nodesAt, setConstant, weight0, weight1 } from './layout';

/** Bytes of a node: three pairs of r g b and a filler, 16 bits each. */
const nodeBytes: i32 = 48;

/** Nodes are stored as shares of 2^14: 2 times white and -2 times white still fit. */
const one: f64 = 16384;

/** What 255 parts of it add up to rounds a sum of shares half up when 14 bits are cut off. */
const half: f64 = 8192.0 / 255.0;

// Indices of constants.
const last: usize = 0;
const unit: usize = 1;
const full: usize = 2;
const greenStep: usize = 3;
const blueStep: usize = 4;
const greenPair: usize = 5;
const bluePair: usize = 6;
const redLast: usize = 7;
const greenLast: usize = 8;
const blueLast: usize = 9;
const three: usize = 10;

/**
 * Lays the nodes out.
 * @param values size^3 rows of r g b, doubles, -2..2; they are used up
 * @param size 2..129
 */
export function prepareFixed(values: usize, size: i32): void {
  const count = size * size * size;
  for (let node = 0; node < count; node++) toShares(values + 24 * node, values + 8 * node);
  const plane = size * size;
  let node = 0;
  for (let blue = 1; blue <= size; blue++)
    for (let green = 1; green <= size; green++)
      for (let red = 1; red <= size; red++, node++) {
        const at = nodesAt + nodeBytes * node;
        const here = values + 8 * node;
        storePair(at, here, red < size ? here + 8 : here);
        storePair(at + 16, here, green < size ? here + 8 * size : here);
        storePair(at + 32, here, blue < size ? here + 8 * plane : here);
      }
  setFixedConstants(size);
}

/** Three doubles to 16-bit shares, which take their place one after the other. */
function toShares(from: usize, to: usize): void {
  for (let channel: usize = 0; channel < 3; channel++)
    store<i16>(to + 2 * channel, <i16>nearest(load<f64>(from + 8 * channel) * one + half));
}

function storePair(at: usize, here: usize, next: usize): void {
  v128.store(at, low16(v128.load64_zero(here), v128.load64_zero(next)));
}

/** Addresses count in units of 16 bytes, three to a node, so that those within a cell fit 16 bits. */
function setFixedConstants(size: i32): void {
  const white = 1 + size + size * size;
  setConstant(last, i16x8.splat(<i16>(size - 1)));
  setConstant(unit, i16x8.splat(1));
  setConstant(full, i16x8.splat(255));
  setConstant(three, i16x8.splat(3));
  setConstant(greenStep, i16x8.splat(<i16>size));
  setConstant(blueStep, i16x8.splat(<i16>(3 * size * size)));
  setConstant(greenPair, i16x8.splat(1));
  setConstant(bluePair, i16x8.splat(2));
  setConstant(redLast, i16x8.splat(<i16>(3 * (white - 1))));
  setConstant(greenLast, i16x8.splat(<i16>(3 * (white - size) + 1)));
  setConstant(blueLast, i16x8.splat(<i16>(3 * (white - size * size) + 2)));
}

/**
 * First pass, into the work area: of each pixel the addresses of its two pairs of corners, and the corners' weights, two
 * 16-bit numbers side by side.
 */
export function findPairs(from: usize, count: i32, stride: i32, work: usize): void {
  for (let i = 0; i < count; i += 8, from += 8 * stride, work += 32) {
    const p01 = low16(v128.load8x8_u(from), v128.load8x8_u(from + stride));
    const p23 = low16(v128.load8x8_u(from + 2 * stride), v128.load8x8_u(from + 3 * stride));
    const p45 = low16(v128.load8x8_u(from + 4 * stride), v128.load8x8_u(from + 5 * stride));
    const p67 = low16(v128.load8x8_u(from + 6 * stride), v128.load8x8_u(from + 7 * stride));
    const rg03 = low32(p01, p23);
    const rg47 = low32(p45, p67);
    const b = i16x8.mul(low64(high32(p01, p23), high32(p45, p67)), constant(last));
    const r = i16x8.mul(low64(rg03, rg47), constant(last));
    const g = i16x8.mul(high64(rg03, rg47), constant(last));
    const cellR = over255(r);
    const cellG = over255(g);
    const cellB = over255(b);
    const restR = i16x8.sub(r, i16x8.mul(cellR, constant(full)));
    const restG = i16x8.sub(g, i16x8.mul(cellG, constant(full)));
    const restB = i16x8.sub(b, i16x8.mul(cellB, constant(full)));

    const inPlane = i16x8.mul(i16x8.add(cellR, i16x8.mul(cellG, constant(greenStep))), constant(three));
    const step = constant(blueStep);
    const corner03 = i32x4.add(i32x4.extend_low_i16x8_u(inPlane), i32x4.extmul_low_i16x8_u(cellB, step));
    const corner47 = i32x4.add(i32x4.extend_high_i16x8_u(inPlane), i32x4.extmul_high_i16x8_u(cellB, step));

    // The way from the dark corner to the light one goes along the largest rest first, along the smallest last. A step in
    // blue is the longest and one in red the shortest: of two steps, one of them masked, the larger is meant.
    const greenOverRed = i16x8.gt_s(restG, restR);
    const larger = i16x8.max_s(restR, restG);
    const smaller = i16x8.min_s(restR, restG);
    const first = i16x8.max_u(
      v128.and(i16x8.gt_s(restB, larger), constant(bluePair)),
      v128.and(greenOverRed, constant(greenPair)),
    );
    const second = i16x8.max_u(
      v128.and(
        i16x8.gt_s(restB, smaller),
        i16x8.max_u(v128.and(greenOverRed, constant(redLast)), constant(greenLast)),
      ),
      constant(blueLast),
    );
    v128.store(work, i32x4.shl(i32x4.add(corner03, i32x4.extend_low_i16x8_u(first)), 4));
    v128.store(work, i32x4.shl(i32x4.add(corner47, i32x4.extend_high_i16x8_u(first)), 4), 16);
    v128.store(work, i32x4.shl(i32x4.add(corner03, i32x4.extend_low_i16x8_u(second)), 4), corner1);
    v128.store(work, i32x4.shl(i32x4.add(corner47, i32x4.extend_high_i16x8_u(second)), 4), corner1 + 16);

    const high = i16x8.max_s(larger, restB);
    const middle = i16x8.max_s(smaller, i16x8.min_s(larger, restB));
    const low = i16x8.min_s(smaller, restB);
    const w0 = i16x8.sub(constant(full), high);
    const w1 = i16x8.sub(high, middle);
    const w2 = i16x8.sub(middle, low);
    v128.store(work, low16(w0, w1), weight0);
    v128.store(work, high16(w0, w1), weight0 + 16);
    v128.store(work, low16(w2, low), weight1);
    v128.store(work, high16(w2, low), weight1 + 16);
  }
}

/** x / 255 without its rest, for x up to 255 * 128. */
// @ts-ignore: decorator
@inline
function over255(x: v128): v128 {
  return i16x8.shr_u(i16x8.add(i16x8.add(x, constant(unit)), i16x8.shr_u(x, 8)), 8);
}

/** Second pass: the weighted sums. Each pixel is stored with a byte more than r g b, which the next one writes over. */
export function blendPairs(work: usize, to: usize, count: i32, stride: i32): void {
  for (let i = 0; i < count; i += 4, work += 16, to += 4 * stride) {
    const two = i16x8.narrow_i32x4_s(blend(work), blend(work + 4));
    const more = i16x8.narrow_i32x4_s(blend(work + 8), blend(work + 12));
    const codes = i8x16.narrow_i16x8_u(two, more);
    v128.store_lane<i32>(to, codes, 0);
    v128.store_lane<i32>(to + stride, codes, 1);
    v128.store_lane<i32>(to + 2 * stride, codes, 2);
    v128.store_lane<i32>(to + 3 * stride, codes, 3);
  }
}

// @ts-ignore: decorator
@inline
function blend(work: usize): v128 {
  const one = i32x4.dot_i16x8_s(v128.load(load<u32>(work), nodesAt), v128.load32_splat(work, weight0));
  const two = i32x4.dot_i16x8_s(v128.load(load<u32>(work, corner1), nodesAt), v128.load32_splat(work, weight1));
  return i32x4.shr_s(i32x4.add(one, two), 14);
}
