import { describe, expect, it } from 'vitest';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { lightBlocks } from '../../src/measure/light-blocks.js';
import { makePicture } from '../../src/picture/picture.js';

const whole = { x: 0, y: 0, width: 4, height: 2 };
const picture = (codes: readonly number[], bits: 8 | 16 = 8) =>
  makePicture(4, 2, { channels: 3, bits }, bits === 8 ? Uint8Array.from(codes) : Uint16Array.from(codes));
const grey = (code: number) => [code, code, code];

describe('blocks of light', () => {
  it('a grey keeps its linear light in the primaries of densities', () => {
    const { light } = lightBlocks(picture(Array(24).fill(128)), transferFunctions.linear, whole);
    expect(light).toHaveLength(24);
    light.forEach((v) => expect(v).toBeCloseTo(128 / 255, 9));
  });

  it('leaves out what is burnt out or blocked, and counts it', () => {
    const codes = [255, 254, 100, 0, 100, 100, 100, 100].flatMap(grey);
    const { light, burntOut, blocked } = lightBlocks(picture(codes), transferFunctions.srgb, whole);
    expect(light).toHaveLength(15);
    expect(burntOut).toBe(2 / 8);
    expect(blocked).toBe(1 / 8);
  });

  it('takes one channel at its end as enough', () => {
    const codes = [[100, 100, 0], [255, 100, 100], ...Array<number[]>(6).fill(grey(90))].flat();
    const { burntOut, blocked } = lightBlocks(picture(codes), transferFunctions.srgb, whole);
    expect([burntOut, blocked]).toEqual([1 / 8, 1 / 8]);
  });

  it('reads a region only', () => {
    const codes = [10, 10, 200, 200, 10, 10, 200, 200].flatMap(grey);
    const { light } = lightBlocks(picture(codes), transferFunctions.linear, {
      x: 2,
      y: 0,
      width: 2,
      height: 2,
    });
    expect([...light].every((v) => Math.abs(v - 200 / 255) < 1e-9)).toBe(true);
  });

  it('reads grey stills, alpha and 16 bits alike', () => {
    const alone = makePicture(2, 1, { channels: 1, bits: 8 }, Uint8Array.of(51, 51));
    const alpha = makePicture(
      2,
      1,
      { channels: 4, bits: 16 },
      Uint16Array.from([13107, 13107, 13107, 0, 13107, 13107, 13107, 9]),
    );
    const region = { x: 0, y: 0, width: 2, height: 1 };
    for (const still of [alone, alpha])
      lightBlocks(still, transferFunctions.linear, region).light.forEach((v) =>
        expect(v).toBeCloseTo(0.2, 9),
      );
  });

  it('averages light, not code values, in the blocks of a large still', () => {
    const [width, height] = [800, 400];
    const data = Uint8Array.from({ length: 3 * width * height }, (_, i) =>
      Math.floor(i / 3) % 2 === 0 ? 50 : 200,
    );
    const still = makePicture(width, height, { channels: 3, bits: 8 }, data);
    const { light } = lightBlocks(still, transferFunctions.srgb, { x: 0, y: 0, width, height });
    const mean = light.reduce((sum, v) => sum + v / light.length, 0);
    const { decode } = transferFunctions.srgb;
    expect(light.length).toBeLessThan(3 * width * height);
    expect(mean).toBeCloseTo((decode(50 / 255) + decode(200 / 255)) / 2, 6);
  });
});
