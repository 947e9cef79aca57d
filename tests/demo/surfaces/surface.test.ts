import { describe, expect, it } from 'vitest';
import { building } from '../../../shared/demo/reflectances/building.js';
import { cloth } from '../../../shared/demo/reflectances/cloth.js';
import { nature } from '../../../shared/demo/reflectances/nature.js';
import { skin } from '../../../shared/demo/reflectances/skin.js';
import { reflectances, type SurfaceName } from '../../../shared/demo/reflectances/index.js';
import { illuminants } from '../../../src/colour/illuminants/index.js';
import { xyzOf } from '../../../src/colour/observer.js';
import { fromFunction } from '../../../src/colour/spectrum.js';
import { layerExposures } from '../../../src/demo/stock/sensitivities.js';
import { balanceLight, lampRadiance, sceneLight, skyRadiance } from '../../../src/demo/surfaces/light.js';
import { paletteUnder } from '../../../src/demo/surfaces/palette.js';
import {
  blendSurfaces,
  lit,
  reflectance,
  surfaceUnder,
  towards,
} from '../../../src/demo/surfaces/surface.js';

/** A few hundred additions of double precision. */
const rounding = 1e-12;
/** A dyed cloth or a leaf changes by less than this over 5 nm. */
const smoothestStep = 0.1;

const grey = (share: number) => fromFunction(() => share);

describe('reflectances', () => {
  it('bear names that are taken once', () => {
    const all = [skin, cloth, building, nature].flatMap((kind) => Object.keys(kind));
    expect(new Set(all).size).toBe(all.length);
    expect(Object.keys(reflectances).sort()).toEqual(all.sort());
  });

  it.each(Object.entries(reflectances))('%s lies within 0 and 1 and is smooth', (_name, curve) => {
    const spectrum = reflectance(curve);
    for (let i = 0; i < spectrum.length; i++) {
      // At 0 or 1 exactly the curve would have been cut off.
      expect(spectrum[i]).toBeGreaterThan(0);
      expect(spectrum[i]).toBeLessThan(1);
      if (i > 0) expect(Math.abs(spectrum[i] - spectrum[i - 1])).toBeLessThan(smoothestStep);
    }
  });
});

describe('lights', () => {
  it.each([
    ['sky', skyRadiance(12000)],
    ['lamp', lampRadiance(2750)],
    ['balance', balanceLight],
    ['sun', sceneLight(5200, 11000, grey(0.5)).sun],
    ['bounce', sceneLight(5200, 11000, reflectance(reflectances.brick)).bounce],
  ])('%s has luminance 1', (_name, power) => {
    expect(xyzOf(power)[1]).toBeCloseTo(1, 12);
  });

  it('off a grey ground the bounce is the sun', () => {
    const { sun, bounce } = sceneLight(5000, 9000, grey(0.3));
    sun.forEach((value, i) => expect(Math.abs(bounce[i] - value)).toBeLessThan(rounding));
  });
});

describe('the film', () => {
  it('is exposed alike in its three layers by what it is balanced for', () => {
    for (const exposure of layerExposures(balanceLight))
      expect(Math.abs(exposure - 1)).toBeLessThan(rounding);
  });

  it('adds up light', () => {
    const [a, b] = [illuminants.a.spectrum, illuminants.d75.spectrum];
    const both = layerExposures(a.map((value, i) => value + 2 * b[i]));
    const [ea, eb] = [layerExposures(a), layerExposures(b)];
    both.forEach((value, k) => expect(Math.abs(value / (ea[k] + 2 * eb[k]) - 1)).toBeLessThan(rounding));
  });

  it('sees a lamp red and a blue sky blue', () => {
    const [lampRed, , lampBlue] = layerExposures(lampRadiance(2750));
    const [skyRed, , skyBlue] = layerExposures(skyRadiance(15000));
    expect(lampRed).toBeGreaterThan(2 * lampBlue);
    expect(skyBlue).toBeGreaterThan(1.5 * skyRed);
  });
});

describe('surfaces', () => {
  const light = sceneLight(5200, 11000, reflectance(reflectances.brickPale));

  it('a grey surface takes the same share of every light', () => {
    const white = surfaceUnder(light, grey(1));
    const dark = surfaceUnder(light, grey(0.18));
    for (const of of ['sun', 'sky', 'bounce'] as const)
      dark[of].forEach((value, k) => expect(Math.abs(value - 0.18 * white[of][k])).toBeLessThan(rounding));
  });

  it('adds the weighed lights', () => {
    const { brick, snow } = paletteUnder(light);
    const out = new Float64Array(3);
    lit(out, brick, 0.7, 0.2, 0.1);
    out.forEach((value, k) =>
      expect(value).toBeCloseTo(0.7 * brick.sun[k] + 0.2 * brick.sky[k] + 0.1 * brick.bounce[k], 14),
    );
    expect(blendSurfaces(brick, snow, 0)).toEqual(brick);
    const half = blendSurfaces(brick, snow, 0.5);
    half.sun.forEach((value, k) => expect(value).toBeCloseTo((brick.sun[k] + snow.sun[k]) / 2, 14));
    towards(out, snow.sun, 1);
    out.forEach((value, k) => expect(value).toBeCloseTo(snow.sun[k], 14));
  });

  it('snow is bluer in the shade than in the sun', () => {
    const { snow } = paletteUnder(light);
    expect(snow.sky[2] / snow.sky[0]).toBeGreaterThan(1.3 * (snow.sun[2] / snow.sun[0]));
  });

  it.each<[SurfaceName, number]>([
    ['red', 0],
    ['green', 1],
    ['leafSunny', 1],
    ['blue', 2],
    ['paintBlue', 2],
  ])('%s exposes layer %i most', (name, layer) => {
    const { sun } = paletteUnder(light)[name];
    expect(Math.max(...sun)).toBe(sun[layer]);
  });

  it('skins grow lighter from deep to fair in every layer', () => {
    const { deep, brown, tanned, fair } = paletteUnder(light);
    [deep, brown, tanned, fair].reduce((darker, lighter) => {
      lighter.sun.forEach((value, k) => expect(value).toBeGreaterThan(darker.sun[k]));
      return lighter;
    });
  });
});
