import { describe, expect, it } from 'vitest';
import type { CauseName } from '../../src/burn-in/causes/index.js';
import { causes } from '../../src/burn-in/causes/index.js';
import { verify } from '../../src/burn-in/verify.js';
import { InputError } from '../../src/errors/input-error.js';
import { compileLook } from '../../src/look/compile-look.js';
import { lookSchema } from '../../src/look/look-schema.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import type { Run } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';
import { makePicture } from '../../src/picture/picture.js';
import { losslessLooks, lookOf } from '../lut/inverse-looks.js';
import { devicesFor } from './devices.js';
import type { Shot } from './scene.js';
import { asItIs, drawnScene, shoot } from './scene.js';

const stills = { width: 288, height: 216, noise: 0.6, bits: 8 } as const;
const say = (words: string) => process.stdout.write(`${words}\n`);

/** From a look of two codes or so to a whole projection and a faded stock put right. */
const looks: Record<string, Run> = {
  weak: lookOf((r, g, b) => [0.985 * r + 0.008, 0.98 * g + 0.006, 0.96 * b + 0.006 + 0.01 * r]),
  projected: losslessLooks['projected warm'],
  'stock put right': compileLook(
    lookSchema.parse({ name: 'stock', stock: { loss: { cyan: 0.3, magenta: 0.1, yellow: 0.2 } } }),
  ),
};

/** What a fault must change, in codes of 255 over the frame, before it can be told from noise at all. */
const detectable = 0.1;

/** How far a device's codes lie from the file's, over the scene: root mean square, codes of 255. */
function changeBy(device: Run, look: Run, scene: ReturnType<typeof drawnScene>): number {
  const asBurnt = new Float64Array(3 * 4800);
  for (let i = 0; i < 4800; i++) asBurnt.set(scene((4 * i) % stills.width, Math.floor(i / 80) * 4), 3 * i);
  const asFiled = asBurnt.slice();
  device(asBurnt, 4800);
  look(asFiled, 4800);
  const square = asBurnt.reduce(
    (sum, value, i) => sum + (value - Math.max(0, Math.min(1, asFiled[i]))) ** 2,
    0,
  );
  return 255 * Math.sqrt(square / asBurnt.length);
}

describe.each(Object.entries(looks))('verify, look "%s"', (name, of) => {
  const lut = sampleLattice(of, 33);
  const devices = devicesFor(lut, sampleLut(sampleLattice(losslessLooks.soft, 33)));
  const random = seededRandom(name.length);
  const scene = drawnScene(name.length);
  const plain = shoot(scene, asItIs, { ...stills, dx: 0, dy: 0, seed: 1 });
  const figures = { worstShift: 0, worstMean: 0 };

  it.each(devices)('$fault $words', ({ fault, run }) => {
    const [dx, dy] = [6 * random() - 3, 6 * random() - 3];
    const burnt = shoot(scene, run, { ...stills, dx, dy, seed: Math.floor(1e6 * random()) });
    const { holds, mean, p95, cause, shift } = verify(plain, burnt, lut);
    const change = changeBy(run, sampleLut(lut), scene);
    const gentle = fault === undefined || causes[fault].gentle;
    if (gentle && change < detectable) expect([undefined, fault]).toContain(cause?.cause);
    else expect(cause?.cause).toBe(fault);
    expect(holds).toBe(gentle && mean <= 1 && p95 <= 2);
    if (fault === undefined) {
      expect(holds).toBe(true);
      figures.worstMean = Math.max(figures.worstMean, mean);
    }
    figures.worstShift = Math.max(figures.worstShift, Math.hypot(shift.dx - dx, shift.dy - dy));
    expect(figures.worstShift).toBeLessThan(0.25);
  });

  it('in figures', () => {
    say(
      `verify, ${name}: ${devices.length} devices; as the file says: mean ${figures.worstMean.toFixed(2)} CIEDE2000; shifts up to 3 pixels found to ${figures.worstShift.toFixed(3)}`,
    );
    expect(figures.worstMean).toBeLessThan(0.25);
  });
});

it('every cause in the registry is simulated', () => {
  const lut = sampleLattice(looks.weak, 5);
  const simulated = devicesFor(lut, sampleLut(lut)).flatMap(({ fault }) => fault ?? []);
  // the stills' own: tested one by one
  const ofStills: CauseName[] = ['eight-bit', 'stills-swapped'];
  expect(new Set<CauseName>([...simulated, ...ofStills])).toEqual(new Set(Object.keys(causes)));
});

describe('verify', () => {
  const scene = drawnScene(4);
  const lut = sampleLattice(looks.projected, 33);
  const look = sampleLut(lut);
  const at = { ...stills, dx: 0, dy: 0, seed: 1 };
  const plain = shoot(scene, asItIs, at);
  const burntBy = (device: Run, shot: Partial<Shot> = {}) =>
    shoot(scene, device, { ...at, seed: 2, dx: 1.4, dy: -0.6, ...shot });

  it('without noise or shift nothing is left', () => {
    const clean = { ...at, noise: 0, bits: 16 } as const;
    const verdict = verify(shoot(scene, asItIs, clean), shoot(scene, look, clean), lut);
    expect(verdict.mean).toBeLessThan(0.01);
    expect(verdict.holds).toBe(true);
    expect(verdict.cause).toBeUndefined();
  });

  it('names the other file when it is at hand', () => {
    const other = sampleLattice(losslessLooks.soft, 17);
    const verdict = verify(plain, burntBy(sampleLut(other)), lut, {
      others: [{ name: 'attic.cube', lut: other }],
    });
    expect(verdict.cause).toMatchObject({ cause: 'another-file', words: 'it fits attic.cube' });
  });

  it('sees a 16-bit recording that was cut to 8 bits, and lets it pass', () => {
    const burnt = burntBy(look);
    const padded = makePicture(
      burnt.width,
      burnt.height,
      { channels: 3, bits: 16 },
      Uint16Array.from(burnt.data, (c) => c << 8),
    );
    const verdict = verify(plain, padded, lut);
    expect(verdict).toMatchObject({ holds: true, cause: { cause: 'eight-bit' } });
    expect(verify(plain, burntBy(look, { bits: 16 }), lut).cause).toBeUndefined();
  });

  it('passes over dust on one of the stills', () => {
    const burnt = burntBy(look);
    for (let i = 0; i < 40; i++)
      for (let y = 0; y < 5; y++)
        for (let x = 0; x < 5; x++)
          burnt.data.fill(
            12,
            3 * ((((i * 37) % 230) + y) * burnt.width + ((i * 91) % 310) + x),
            3 * ((((i * 37) % 230) + y) * burnt.width + ((i * 91) % 310) + x + 1),
          );
    const verdict = verify(plain, burnt, lut);
    expect(verdict.cause).toBeUndefined();
    expect(verdict.mean).toBeLessThan(1);
  });

  it('takes a still with alpha, and a 1D look', () => {
    const withAlpha = makePicture(plain.width, plain.height, { channels: 4, bits: 8 });
    for (let i = 0; i < plain.data.length; i++)
      withAlpha.data[4 * Math.floor(i / 3) + (i % 3)] = plain.data[i];
    const values = Float64Array.from(
      { length: 3 * 256 },
      (_, i) => 0.05 + 0.9 * (Math.floor(i / 3) / 255) ** 0.9,
    );
    const curves = { kind: '1d', size: 256, domainMin: [0, 0, 0], domainMax: [1, 1, 1], values } as const;
    const verdict = verify(withAlpha, burntBy(sampleLut(curves)), curves);
    expect(verdict.holds).toBe(true);
    expect(verdict.cause).toBeUndefined();
    expect(verify(plain, burntBy(asItIs), curves).cause?.cause).toBe('not-applied');
  });

  it('a frame without any texture or colour is still judged', () => {
    const flat = (code: number) =>
      makePicture(200, 150, { channels: 3, bits: 8 }, new Uint8Array(90000).fill(code));
    const grey = Float64Array.of(0.5, 0.5, 0.5).map((v) => Math.round(255 * v) / 255);
    look(grey, 1);
    const burnt = flat(0);
    burnt.data.forEach((_, i) => (burnt.data[i] = Math.round(255 * grey[i % 3])));
    expect(verify(flat(128), burnt, lut).holds).toBe(true);
    expect(verify(flat(128), flat(128), lut).holds).toBe(false);
  });

  it('refuses stills of two sizes, tiny ones, and two frames', () => {
    const small = makePicture(40, 40, { channels: 3, bits: 8 });
    expect(() => verify(plain, small, lut)).toThrow(InputError);
    expect(() => verify(small, small, lut)).toThrow(/too small/);
    expect(() => verify(plain, shoot(drawnScene(99), look, at), lut)).toThrow(/same frame/);
  });
});
