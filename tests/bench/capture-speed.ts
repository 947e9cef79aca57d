import { measureSpeed } from '../../src/capture/speed/measure-speed.js';
import { readSeries } from '../../src/capture/speed/series.js';
import { type Case, cases } from './capture-speed/cases.js';
import { record, truthOf } from './capture-speed/record.js';

/** Targets of `capture speed` on simulated recordings: the speed within 0.5 %, the flicker within 10 % of itself. */
const speedTarget = 0.005;
const flickerTarget = 0.1;

const widths = [30, 10, 10, 9, 10, 10, 8, 8, 8, 8, 8];
const row = (...cells: (string | number)[]) =>
  process.stdout.write(
    `${cells.map((cell, i) => (i === 0 ? String(cell).padEnd(widths[0]) : String(cell).padStart(widths[i]))).join('')}\n`,
  );
const percent = (share: number) => `${(100 * share).toFixed(2)} %`;

async function measure({ shot, nominalFps }: Case) {
  const { projector, cameraFps, exposureS } = shot;
  const series = await readSeries(record(shot));
  return measureSpeed(series, { nominalFps, blades: projector.blades, cameraFps, exposureS });
}

/** Seeds given on the command line, or those that were kept aside while the analysis was made; every sixth recording for --quick. */
const quick = process.argv.includes('--quick');
const given = process.argv
  .slice(2)
  .filter((word) => /^\d+$/.test(word))
  .map(Number);
const all = (given.length > 0 ? given : [101, 102]).flatMap(cases);
const shown = quick ? all.filter((_, i) => i % 6 === 0) : all;

row(
  ...['recording', 'true fps', 'off by', 'how sure', 'flicker', 'off by', 'told'],
  ...['doubled', 'found', 'blended', 'found'],
);
let [speeds, among, flickers, told] = [0, 0, 0, 0];
for (const one of shown) {
  const truth = truthOf(one.shot);
  const { speed, confidence, flicker, filmOnFrames } = await measure(one);
  const candidates = speed === undefined ? [] : [speed.filmFps, ...speed.others];
  const isRight = (fps: number) => Math.abs(fps / truth.filmFps - 1) < speedTarget;
  const away = flicker.percent / truth.percentFlicker - 1;
  if (candidates.slice(0, 1).some(isRight)) speeds++;
  else if (confidence === 'open' && candidates.some(isRight)) among++;
  if (Math.abs(away) < flickerTarget) flickers++;
  else if (Math.abs(away) < (2 * flicker.error) / flicker.percent) told++;
  row(
    one.name,
    truth.filmFps.toFixed(3),
    speed === undefined ? '-' : percent(speed.filmFps / truth.filmFps - 1),
    confidence,
    `${truth.percentFlicker.toFixed(2)} %`,
    percent(away),
    `${((100 * flicker.error) / flicker.percent).toFixed(0)} %`,
    truth.duplicated,
    filmOnFrames?.duplicated ?? '-',
    truth.blended,
    filmOnFrames?.blended ?? '-',
  );
}
process.stdout.write(
  `${shown.length} recordings: speed within 0.5 % in ${speeds}, named as the other of two that look alike in ${among}; ` +
    `flicker within 10 % in ${flickers}, off but within twice the error that was told in ${told}\n`,
);
if (speeds + among < shown.length || flickers + told < shown.length) process.exitCode = 1;
