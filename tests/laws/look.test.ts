import fc from 'fast-check';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compileLook } from '../../src/look/compile-look.js';
import type { Look } from '../../src/look/look-schema.js';
import { readLook } from '../../src/look/read-look.js';
import type { Run, Triple } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';
import { lightPath } from '../../src/look/light-path.js';
import { readCamera } from '../../src/look/sections/camera.js';
import { deliveryOf, toDeliveryPrimaries } from '../../src/look/sections/delivery.js';
import { anyLook, luminancesOf, usualLook, wedgeOf } from '../look/looks.js';

const seed = 111;
const folder = join(import.meta.dirname, '../../looks');
const ready = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => [name, readLook(readFileSync(join(folder, name), 'utf8'), name)] as const);

/** Lines through the cube: the neutral axis, lines across, and lines along its faces, where channels are 0 and 1. */
function linesOf(count: number): (readonly [Triple, Triple])[] {
  const random = seededRandom(seed);
  const point = (onFace: boolean): Triple => {
    const values = [random(), random(), random()];
    if (onFace) values[Math.floor(3 * random())] = Math.round(random());
    return values as unknown as Triple;
  };
  return [
    [
      [0, 0, 0],
      [1, 1, 1],
    ],
    ...Array.from({ length: count }, (_, i) => [point(i % 2 === 0), point(i % 2 === 0)] as const),
  ];
}

/** The output along a part of a line: r g b r g b ... */
function sampled(
  run: Run,
  [a, b]: readonly [Triple, Triple],
  from: number,
  to: number,
  steps: number,
): Float64Array {
  const values = new Float64Array(3 * (steps + 1));
  for (let i = 0; i <= steps; i++) {
    const t = from + ((to - from) * i) / steps;
    for (let k = 0; k < 3; k++) values[3 * i + k] = a[k] + t * (b[k] - a[k]);
  }
  run(values, steps + 1);
  return values;
}

const steps = 512;
const zoom = 16;
const zooms = 5;

/** The largest step left after looking ever closer at the steepest place of a line: that of a jump does not shrink. */
function jumpOf(run: Run, line: readonly [Triple, Triple]): number {
  let [from, to, count, largest] = [0, 1, steps, 0];
  for (let round = 0; round <= zooms; round++) {
    const values = sampled(run, line, from, to, count);
    largest = 0;
    let at = 0;
    for (let i = 3; i < values.length; i++)
      if (!(Math.abs(values[i] - values[i - 3]) <= largest)) {
        largest = Math.abs(values[i] - values[i - 3]);
        at = Math.floor(i / 3) - 1;
      }
    const width = (to - from) / count;
    [from, to, count] = [from + at * width, from + (at + 1) * width, zoom];
  }
  return largest;
}

/** The largest second difference on a grid of 1/512, in 8-bit codes: how hard the sharpest bend is. */
function bendOf(run: Run, line: readonly [Triple, Triple]): number {
  const values = sampled(run, line, 0, 1, steps);
  let largest = 0;
  for (let i = 3; i < values.length - 3; i++)
    largest = Math.max(largest, Math.abs(values[i + 3] - 2 * values[i] + values[i - 3]));
  return 255 * largest;
}

const lines = linesOf(40);
const fewLines = lines.slice(0, 16);
const worstJump = (look: Look, lines: readonly (readonly [Triple, Triple])[]) => {
  const run = compileLook(look);
  return Math.max(...lines.map((line) => jumpOf(run, line)));
};

/**
 * The last step is 1 / (512 * 16^5), 2e-9 of a line. Where the encoding that is delivered has a finite slope, slopes
 * stay below 500: gamma of small light beside a toe and a surround is that steep. A jump would be endlessly steeper.
 */
const smoothStep = 1e-6;
/** Pure powers and logs near black have no greatest slope: 2e-9 of a line, to the power of 0.8 / 2.6, and some. */
const steepStep = 5e-3;
const finiteSlope = ['srgb', 'bt709', 'linear'];

describe.each(ready)('ready look %s', (name, look) => {
  it('does not jump', () => {
    const run = compileLook(look);
    const bend = Math.max(...lines.map((line) => bendOf(run, line)));
    const jump = worstJump(look, lines);
    process.stdout.write(
      `${name}: sharpest bend ${bend.toFixed(2)} 8-bit codes at 1/512, step at 2e-9 ${jump.toExponential(1)}\n`,
    );
    const { encoding } = deliveryOf(look.delivery, look.camera);
    expect(jump).toBeLessThan(finiteSlope.includes(encoding as string) ? smoothStep : steepStep);
  });

  it('keeps the neutral axis rising, in luminance and in every channel, from no light to the open gate', () => {
    const wedge = wedgeOf(look, 1024);
    compileLook(look)(wedge, 1025);
    for (let i = 3; i < wedge.length; i++) expect(wedge[i] - wedge[i - 3]).toBeGreaterThanOrEqual(-1e-9);
    const luminances = luminancesOf(look, wedge);
    luminances.forEach((luminance, i) =>
      expect(luminance).toBeGreaterThanOrEqual((luminances[i - 1] ?? 0) - 1e-9),
    );
  });
});

describe('looks of the usual kind', () => {
  it('do not jump', () => {
    let worst = 0;
    fc.assert(
      fc.property(usualLook, (look) => {
        const jump = worstJump(look, fewLines);
        worst = Math.max(worst, jump);
        return jump < steepStep;
      }),
      { seed, numRuns: 15 },
    );
    process.stdout.write(`usual looks: largest step at 2e-9 ${worst.toExponential(1)}\n`);
  });

  it('keep the neutral axis rising in luminance as far as light stays below white', () => {
    let [worst, beyond] = [0, 0];
    fc.assert(
      fc.property(usualLook, (look) => {
        const wedge = wedgeOf(look, 512);
        const light = wedge.slice();
        const toDevice = toDeliveryPrimaries(deliveryOf(look.delivery, look.camera));
        for (const step of [readCamera(look.camera), ...lightPath(look), toDevice]) step(light, 513);
        const white = light.findIndex((value) => value > 1);
        const end = white < 0 ? 513 : Math.floor(white / 3);
        compileLook(look)(wedge, 513);
        const luminances = luminancesOf(look, wedge);
        const falls = luminances.map((luminance, i) => (luminances[i - 1] ?? -Infinity) - luminance);
        worst = Math.max(worst, ...falls.slice(0, end));
        beyond = Math.max(beyond, ...falls.slice(end));
        return falls.slice(0, end).every((fall) => fall < 1e-9);
      }),
      { seed, numRuns: 100 },
    );
    // Beyond white the roll-off goes by the highest channel, and takes the others down with it where its lead grows.
    process.stdout.write(
      `usual looks: largest step down of luminance ${worst.toExponential(1)}, where light passes white ${beyond.toExponential(1)}\n`,
    );
  });
});

it('looks for any camera and device do not jump', () => {
  let worst = 0;
  fc.assert(
    fc.property(anyLook(true), (look) => {
      const jump = worstJump(look, fewLines);
      worst = Math.max(worst, jump);
      return jump < steepStep;
    }),
    { seed, numRuns: 25 },
  );
  process.stdout.write(`any camera and device: largest step at 2e-9 ${worst.toExponential(1)}\n`);
});
