import { odd, type TransferFunction } from './transfer-function.js';

const m1 = 2610 / 16384;
const m2 = (2523 / 4096) * 128;
const c1 = 3424 / 4096;
const c2 = (2413 / 4096) * 32;
const c3 = (2392 / 4096) * 32;

/** The luminance of signal 1. */
export const pqPeakCdM2 = 10000;

/** Luminance of diffuse white, HDR reference white of Report ITU-R BT.2408. */
const whiteCdM2 = 203;

function decodeInside(signal: number): number {
  const root = signal ** (1 / m2);
  return (Math.max(root - c1, 0) / (c2 - c3 * root)) ** (1 / m1);
}

function encodeInside(light: number): number {
  const power = light ** m1;
  return ((c1 + c2 * power) / (1 + c3 * power)) ** m2;
}

/** The derivative of the decoding at signal 1, where numerator and denominator of the formula are both c2 - c3. */
const slopeAtPeak = (1 + c3) / ((c2 - c3) * m1 * m2);

/**
 * PQ: light as a share of 10000 cd/m2. Odd about zero; above signal 1, where the formula soon runs into a pole, its
 * tangent goes on. No light is signal 7.3e-7, not 0; the signals between decode to no light.
 */
export const pq: TransferFunction = {
  title: 'PQ',
  source: 'SMPTE ST 2084:2014, ITU-R BT.2100-2; level of diffuse white, 203 cd/m2: Report ITU-R BT.2408',
  whiteLight: whiteCdM2 / pqPeakCdM2,
  decode: odd((signal) => (signal <= 1 ? decodeInside(signal) : 1 + (signal - 1) * slopeAtPeak)),
  encode: odd((light) => (light <= 1 ? encodeInside(light) : 1 + (light - 1) / slopeAtPeak)),
};
