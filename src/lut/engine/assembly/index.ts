// The engine's inner loops: a picture's codes through a 3D LUT, tetrahedrally, four to eight pixels at once.
// Compiled by the build to WebAssembly with 128-bit SIMD. It knows addresses and nothing else: see ../simd-engine.ts.

import { blendPairs, findPairs, prepareFixed } from './fixed';
import { nodesAt as firstNode, passPixels, tail, workBytes as bytesOfWork } from './layout';
import { blendCorners, findCorners, findCorners16, prepareSingle, setDomain } from './single';

export { prepareFixed, prepareSingle, setDomain };

/** Address of the first node. */
export const nodesAt: i32 = <i32>firstNode;

/** Bytes of a work area: what each thread needs for itself. */
export const workBytes: i32 = bytesOfWork;

/** The kinds of run: 8 bits on a domain of 0..1, in whole numbers; 16 bits on that; and any codes on any domain. */
export const fixed8: i32 = 0;
export const whole16: i32 = 1;
export const any8: i32 = 2;
export const any16: i32 = 3;
export const anyFloat: i32 = 4;

/**
 * A run of pixels through the nodes that were prepared.
 * @param from, to codes, r g b or r g b alpha; they may not overlap
 * @param count pixels; up to 128 bytes behind those in `from` are read too, and mean nothing
 * @param channels 3 or 4; alpha is copied
 * @param work this thread's work area
 */
export function run(kind: i32, from: usize, to: usize, count: i32, channels: i32, work: usize): void {
  const bytes = kind == anyFloat ? 4 : kind == fixed8 || kind == any8 ? 1 : 2;
  const stride = channels * bytes;
  for (; count > passPixels; count -= passPixels) {
    pass(kind, from, to, passPixels, stride, work);
    if (channels == 4) copyAlpha(from, to, passPixels, bytes);
    from += passPixels * stride;
    to += passPixels * stride;
  }
  // A pass stores a little more than its pixels: the last one goes by way of the work area.
  pass(kind, from, work + tail, count, stride, work);
  if (channels == 4) copyAlpha(from, work + tail, count, bytes);
  memory.copy(to, work + tail, count * stride);
}

function pass(kind: i32, from: usize, to: usize, count: i32, stride: i32, work: usize): void {
  if (kind == fixed8) {
    findPairs(from, count, stride, work);
    blendPairs(work, to, count, stride);
    return;
  }
  if (kind == whole16) findCorners16(from, count, stride, work);
  else if (kind == any16) findCorners<u16>(from, count, stride, work);
  else if (kind == any8) findCorners<u8>(from, count, stride, work);
  else findCorners<f32>(from, count, stride, work);
  if (kind == any8) blendCorners<u8>(work, to, count, stride);
  else if (kind == anyFloat) blendCorners<f32>(work, to, count, stride);
  else blendCorners<u16>(work, to, count, stride);
}

function copyAlpha(from: usize, to: usize, count: i32, bytes: i32): void {
  for (let at = 3 * bytes; at < 4 * bytes * count; at += 4 * bytes) {
    if (bytes == 1) store<u8>(to + at, load<u8>(from + at));
    else if (bytes == 2) store<u16>(to + at, load<u16>(from + at));
    else store<u32>(to + at, load<u32>(from + at));
  }
}
