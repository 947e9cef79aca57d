// How surely a burn-in is judged: every usual cause through several looks on three scenes, simulated. For each recording:
// noise of 0.6 code, 8 bits, a shift of up to 3 pixels with thirds. Prints what was named, and each miss.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { causes } from '../../src/burn-in/causes/index.js';
import { verify } from '../../src/burn-in/verify.js';
import { type DemoStillName, renderDemoStill } from '../../src/demo/index.js';
import { compileLook } from '../../src/look/compile-look.js';
import { readLook } from '../../src/look/read-look.js';
import { sampleLut } from '../../src/lut/interpolate.js';
import { sampleLattice } from '../../src/lut/lattice.js';
import type { Run } from '../../src/maths/matrix3.js';
import { seededRandom } from '../../src/maths/random.js';
import { devicesFor } from '../burn-in/devices.js';
import { asItIs, drawnScene, type Scene, shoot } from '../burn-in/scene.js';

const root = join(import.meta.dirname, '../../../..');
const stills = { width: 288, height: 216, noise: 0.6, bits: 8 } as const;

/** A demo still drawn three times as large: places at thirds of a pixel are means of 3 x 3 of its pixels. */
function demoScene(name: DemoStillName): Scene {
  const [fine, margin] = [3, 4];
  const width = fine * (stills.width + 2 * margin);
  const { data } = renderDemoStill(name, {
    width,
    height: fine * (stills.height + 2 * margin),
    bits: 16,
    age: 'warm',
  });
  return (x, y) => {
    const [left, top] = [x, y].map((place) => Math.round(fine * (place + margin)));
    const sum: [number, number, number] = [0, 0, 0];
    for (let j = 0; j < fine; j++)
      for (let i = 0; i < fine; i++)
        for (let c = 0; c < 3; c++)
          sum[c] += data[3 * ((top + j) * width + left + i) + c] / (65535 * fine * fine);
    return sum;
  };
}

const scenes: Record<string, Scene> = {
  drawn: drawnScene(4),
  regatta: demoScene('regatta'),
  tram: demoScene('tram'),
};

/** A look of two codes or so, beside ready ones. */
const weak: Run = (values, count) => {
  for (let i = 0; i < 3 * count; i += 3) {
    const [r, g, b] = values.subarray(i, i + 3);
    values.set([0.985 * r + 0.008, 0.98 * g + 0.006, 0.96 * b + 0.006 + 0.01 * r], i);
  }
};
const ready = (name: string): Run =>
  compileLook(readLook(readFileSync(join(root, 'looks', `${name}.json`), 'utf8'), name));
const looks: Record<string, Run> = {
  weak,
  'neutral-soft-projection': ready('neutral-soft-projection'),
  'warm-stock-and-lamp': ready('warm-stock-and-lamp'),
  'pink-reel': ready('pink-reel'),
  'candle-warm-old-lamp': ready('candle-warm-old-lamp'),
};
const other = ready('xenon-hall');

/** A difference, in codes of 255 over the frame, below which a gentle cause cannot be told from noise. */
const detectable = 0.1;

function difference(a: Run, b: Run, scene: Scene): number {
  const pixels = 4800;
  const run = new Float64Array(3 * pixels);
  for (let i = 0; i < pixels; i++)
    run.set(scene((i * 37) % stills.width, Math.floor((i * 37) / stills.width) % stills.height), 3 * i);
  const [x, y] = [run.slice(), run];
  a(x, pixels);
  b(y, pixels);
  const held = (code: number) => Math.max(0, Math.min(1, code));
  return 255 * Math.sqrt(x.reduce((sum, code, i) => sum + (held(code) - held(y[i])) ** 2, 0) / x.length);
}

const only = process.argv[2] ?? '';
const random = seededRandom(225);
let [right, total] = [0, 0];
for (const [sceneName, scene] of Object.entries(scenes)) {
  const plain = shoot(scene, asItIs, { ...stills, dx: 0, dy: 0, seed: 1 });
  for (const [lookName, of] of Object.entries(looks)) {
    const lut = sampleLattice(of, 33);
    for (const { fault, words, run } of devicesFor(lut, sampleLut(sampleLattice(other, 33)))) {
      const third = () => Math.round(18 * random() - 9) / 3;
      const shot = { ...stills, dx: third(), dy: third(), seed: Math.floor(1e6 * random()) };
      if (!`${sceneName} ${lookName} ${fault} ${words}`.includes(only)) continue;
      const { holds, mean, p95, cause, tried } = verify(plain, shoot(scene, run, shot), lut);
      const gentle = fault === undefined || causes[fault].gentle;
      const far = difference(run, sampleLut(lut), scene);
      const named = cause?.cause === fault || (gentle && far < detectable && cause === undefined);
      total++;
      if (named && (gentle || !holds)) right++;
      else
        process.stdout.write(
          `${sceneName}, ${lookName}: ${fault ?? 'as the file says'} ${words} named ${cause?.cause ?? 'nothing'} ${cause?.words ?? ''}, ` +
            `differs by ${far.toFixed(2)} codes, mean ${mean.toFixed(2)}, p95 ${p95.toFixed(2)}, ` +
            `${tried
              .slice(0, 4)
              .map(({ cause: name, rms }) => `${name} ${rms.toFixed(3)}`)
              .join(', ')}\n`,
        );
    }
  }
}
process.stdout.write(`${right} of ${total} recordings judged right\n`);
