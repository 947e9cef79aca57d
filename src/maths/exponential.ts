const steps = 256;
const perStep = Math.LN2 / steps;
const stepsPerUnit = steps / Math.LN2;
/** 2^(i / 256): the fraction of a power of two. */
const fractions = Float64Array.from({ length: steps }, (_, i) => 2 ** (i / steps));
/** Whole powers of two, 2^-160 to 2^95. */
const lowestPower = -160;
const wholes = Float64Array.from({ length: 256 }, (_, i) => 2 ** (i + lowestPower));
/** Below this all is 0. */
const lowest = -100;

/**
 * e^x to a relative error of 2e-13, about three times as fast as Math.exp in a loop: a power of two by table, the
 * rest by four terms of the series.
 * @param x below 65; below -100 the result is 0
 */
export function fastExp(x: number): number {
  const whole = Math.floor(x * stepsPerUnit + 0.5);
  const r = x - whole * perStep;
  const k = whole | 0;
  return x < lowest
    ? 0
    : fractions[k & 255] * wholes[(k >> 8) - lowestPower] * (1 + r * (1 + r * (0.5 + r * (1 / 6))));
}
