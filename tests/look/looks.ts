import fc from 'fast-check';
import { primaries } from '../../src/colour/primaries/index.js';
import { rgbToXyz } from '../../src/colour/primaries/rgb-matrix.js';
import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import { dyeSets } from '../../src/film/dye-sets/index.js';
import { compileLook } from '../../src/look/compile-look.js';
import type { Look } from '../../src/look/look-schema.js';
import { checkLook } from '../../src/look/read-look.js';
import { codesOfFilm } from '../../src/look/sections/camera.js';
import { deliveryOf } from '../../src/look/sections/delivery.js';
import { primariesOf, transferFunctionOf } from '../../src/look/sections/signal.js';
import { toFull } from '../../src/colour/signal-range.js';
import { lamps } from '../../src/projection/lamps/index.js';

/** A look of these fields, read as a file would be. */
export const lookOf = (fields: object): Look => checkLook({ name: 'test', ...fields }, 'test.json');

/** Code values through a look, one colour. */
export function through(look: Look, code: readonly number[]): [number, number, number] {
  const values = Float64Array.from(code);
  compileLook(look)(values, 1);
  return [values[0], values[1], values[2]];
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const share = number(0, 1);
const rgb = (least: number, most: number) =>
  fc.record({ red: number(least, most), green: number(least, most), blue: number(least, most) });
const keys = <T extends object>(registry: T) =>
  fc.constantFrom(...(Object.keys(registry) as (keyof T & string)[]));

/** A camera's log curve and primaries of its own, as a look can spell them out. */
export const customCamera = {
  encoding: {
    base: 10,
    logSideSlope: 0.25,
    logSideOffset: 0.4,
    linSideSlope: 5.5,
    linSideOffset: 0.05,
    linSideBreak: 0.01,
  },
  primaries: { red: [0.73, 0.28], green: [0.14, 0.855], blue: [0.1, -0.05], white: [0.3127, 0.329] },
};

const encoding = fc.oneof(
  { weight: 8, arbitrary: keys(transferFunctions) },
  fc.constant(customCamera.encoding),
);
const primariesChoice = fc.oneof(
  { weight: 8, arbitrary: keys(primaries) },
  fc.constant(customCamera.primaries),
);
const range = fc.constantFrom('full', 'legal');
const surround = fc.constantFrom('average', 'dim', 'dark');

/** Every encoding, and every primaries, that a look can name or spell out. */
export const encodings = {
  ...Object.fromEntries(Object.keys(transferFunctions).map((name) => [name, name])),
  custom: customCamera.encoding,
};
export const primariesChoices = {
  ...Object.fromEntries(Object.keys(primaries).map((name) => [name, name])),
  custom: customCamera.primaries,
};

/** A step that asks for next to nothing, so that the whole way is gone and not left out. */
export const next = { print: { exposureStops: 1e-12 } };

/** Sections over all that a look file may ask for, or (`usual`) over what reels, projectors and rooms are like. */
export const sectionsOf = (usual: boolean) => ({
  stock: fc.record({
    dyes: keys(dyeSets),
    loss: fc.record({
      cyan: number(0, usual ? 0.5 : 0.9),
      magenta: number(0, usual ? 0.3 : 0.9),
      yellow: number(0, usual ? 0.4 : 0.9),
    }),
    stain: usual
      ? fc.record({ red: number(0, 0.03), green: number(0, 0.06), blue: number(0, 0.15) })
      : rgb(-0.2, 1),
  }),
  print: fc.record({
    exposureStops: usual ? number(-0.5, 0.5) : number(-4, 4),
    printerPoints: usual ? rgb(-6, 6) : rgb(-50, 50),
    contrast: usual ? number(0.8, 1.25) : number(0.2, 3),
    saturation: usual ? number(0.7, 1.25) : number(0, 3),
  }),
  projector: fc.record({
    lamp: fc.oneof(keys(lamps), fc.record({ kelvin: usual ? number(2400, 6500) : number(1500, 25000) })),
    heatFilter: fc.boolean(),
    flare: usual ? number(0, 0.01) : number(0, 0.1),
  }),
  room: fc.record({
    screenLuminance: number(0.5, 1000),
    surround,
    displaySurround: surround,
    adaptation: usual ? number(0.5, 1) : share,
  }),
  rolloff: fc.record({
    shoulderStart: usual ? number(0.5, 0.85) : number(0, 0.98),
    shoulderSoftness: usual ? number(0.2, 0.6) : share,
    toe: usual ? number(0, 0.5) : share,
  }),
});

export const cameras = fc.record(
  { encoding, primaries: primariesChoice, range, flare: number(0, 0.05) },
  { requiredKeys: ['encoding', 'primaries', 'range'] },
);
export const deliveries = fc.record(
  { encoding, primaries: primariesChoice, range, gamutCompression: fc.boolean() },
  { requiredKeys: [] },
);

/** Looks of any sections before any camera, for any device. */
export const anyLook = (usual: boolean): fc.Arbitrary<Look> =>
  fc
    .record({ camera: cameras, delivery: deliveries, ...sectionsOf(usual) }, { requiredKeys: [] })
    .map((fields) => lookOf(fields));

/** Looks like those that are ready made: an sRGB still or television signal in BT.709, usual values. */
export const usualLook: fc.Arbitrary<Look> = fc
  .record(
    {
      camera: fc.record({ encoding: fc.constantFrom('srgb', 'bt1886', 'gamma-2.2'), range }),
      ...sectionsOf(true),
    },
    { requiredKeys: ['rolloff'] },
  )
  .map((fields) => lookOf(fields));

/** Code values of a neutral wedge from no light to the open gate, as the look's camera writes it: r g b r g b ... */
export function wedgeOf(look: Look, steps: number): Float64Array {
  const { none, openGate } = codesOfFilm(look.camera);
  const codes = new Float64Array(3 * (steps + 1));
  for (let i = 0; i <= steps; i++) codes.fill(none + ((openGate - none) * i) / steps, 3 * i, 3 * i + 3);
  return codes;
}

/** Linear luminance of delivered code values, diffuse white about 1. */
export function luminancesOf(look: Look, codes: Float64Array): number[] {
  const delivery = deliveryOf(look.delivery, look.camera);
  const { decode, whiteLight } = transferFunctionOf(delivery.encoding);
  const weights = rgbToXyz(primariesOf(delivery.primaries)).slice(3, 6);
  const light = Array.from(codes, (code) => decode(toFull(code, delivery.range)) / whiteLight);
  return Array.from({ length: codes.length / 3 }, (_, i) =>
    weights.reduce((sum, weight, k) => sum + weight * light[3 * i + k], 0),
  );
}
