import Color from 'colorjs.io';
import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { pqPeakCdM2 } from '../../src/colour/transfer-functions/pq.js';
import { bt2020RoundedConstants, difference, hlgRoundedConstants, srgbRoundedBreak } from '../tolerances.js';

const steps = (from: number, to: number, count = 1000) =>
  Array.from({ length: count + 1 }, (_, i) => from + (i * (to - from)) / count);

/** The worst difference between two functions over some inputs. */
const worst = (inputs: number[], ours: (x: number) => number, theirs: (x: number) => number) =>
  Math.max(...inputs.map((x) => Math.abs(ours(x) - theirs(x))));

/** A grey through colorjs.io. */
const through = (from: string, to: string) => (x: number) =>
  new Color(from, [x, x, x]).to(to).coords[0] as number;

describe('culori', () => {
  const toLinear = converter('lrgb');
  const toSrgb = converter('rgb');

  it('decodes sRGB alike, negative and beyond 1 too', () => {
    const theirs = (x: number) => toLinear({ mode: 'rgb', r: x, g: x, b: x }).r;
    expect(worst(steps(-1.2, 1.2), transferFunctions.srgb.decode, theirs)).toBeLessThan(difference);
  });

  it('encodes sRGB alike, but for the rounded break', () => {
    const theirs = (x: number) => toSrgb({ mode: 'lrgb', r: x, g: x, b: x }).r;
    expect(worst(steps(-1.2, 1.2), transferFunctions.srgb.encode, theirs)).toBeLessThan(difference);
    expect(worst(steps(0.00313, 0.003132), transferFunctions.srgb.encode, theirs)).toBeLessThan(
      srgbRoundedBreak,
    );
  });

  it('encodes the BT.2020 camera curve alike, but for the exact constants it has', () => {
    const toBt2020 = converter('rec2020');
    // Luminance y of a grey, in the colours of D65.
    const theirs = (y: number) =>
      toBt2020({ mode: 'xyz65', x: (0.3127 / 0.329) * y, y, z: (0.3583 / 0.329) * y }).g;
    expect(worst(steps(-1, 1), transferFunctions.bt709.encode, theirs)).toBeLessThan(bt2020RoundedConstants);
  });
});

describe('colorjs.io', () => {
  it('has sRGB alike', () => {
    const { decode, encode } = transferFunctions.srgb;
    expect(worst(steps(-1.2, 1.2), decode, through('srgb', 'srgb-linear'))).toBeLessThan(difference);
    expect(worst(steps(-1.2, 1.2), encode, through('srgb-linear', 'srgb'))).toBeLessThan(difference);
  });

  it('has PQ alike, inside its range', () => {
    const { decode, encode, whiteLight } = transferFunctions.pq;
    const [toLinear, toSignal] = [
      through('rec2100pq', 'rec2100-linear'),
      through('rec2100-linear', 'rec2100pq'),
    ];
    expect(whiteLight * pqPeakCdM2).toBe(203);
    expect(worst(steps(0, 1), decode, (x) => toLinear(x) * whiteLight)).toBeLessThan(difference);
    expect(worst(steps(0, 1), encode, (x) => toSignal(x / whiteLight))).toBeLessThan(difference);
  });

  it('has HLG alike, but for rounded constants', () => {
    const { decode, encode } = transferFunctions.hlg;
    const scale = 3.7743;
    const [toLinear, toSignal] = [
      through('rec2100hlg', 'rec2100-linear'),
      through('rec2100-linear', 'rec2100hlg'),
    ];
    expect(worst(steps(0, 1), decode, (x) => toLinear(x) / scale)).toBeLessThan(hlgRoundedConstants);
    expect(worst(steps(-0.08, 1), encode, (x) => toSignal(x * scale))).toBeLessThan(hlgRoundedConstants);
  });

  it('has the logarithm of ACEScct in ACEScc: the two differ below light 2^-7 only', () => {
    const { decode, encode } = transferFunctions.acescct;
    expect(
      worst(
        steps(0.1553, 1.4),
        (x) => decode(x) / 2 ** (17.52 * x),
        (x) => through('acescc', 'acescg')(x) / 2 ** (17.52 * x),
      ),
    ).toBeLessThan(difference);
    expect(worst(steps(2 ** -7, 200), encode, through('acescg', 'acescc'))).toBeLessThan(difference);
  });

  it('has the BT.2020 camera curve alike, but for the exact constants it has', () => {
    const theirs = through('rec2020-linear', '--rec2020-oetf');
    expect(worst(steps(-1, 1), transferFunctions.bt709.encode, theirs)).toBeLessThan(bt2020RoundedConstants);
  });
});
