import { readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { type DemoStillName, type DemoStillOptions, renderDemoStill } from '../demo/index.js';
import { makeFolder } from '../files/make-folder.js';
import { writeSafely } from '../files/write-beside-then-rename.js';
import { buildLook } from '../jobs/build-look.js';
import { checkTable, isGood } from '../jobs/check-lut.js';
import { previewLook } from '../jobs/preview-look.js';
import { signalsOf } from '../jobs/signal.js';
import type { Look } from '../look/look-schema.js';
import { loadLabelFonts } from '../stills/label-fonts.js';
import { encodeStill } from '../stills/write-still.js';
import { loadEngine } from './engine/load-engine.js';
import { loadLook, loadLut } from './load.js';
import { maker, packageFolder } from './maker.js';
import { terminal } from './report.js';

interface Screening {
  readonly still: DemoStillName;
  readonly film: Required<Pick<DemoStillOptions, 'age' | 'stock'>>;
  readonly look: string;
}

const blueReel = {
  film: { age: 'blue-shifted', stock: 'reversal-late' },
  look: 'blue-shifted-and-lamp.json',
} as const;

/** The reels of the club that the demonstration shows, and the looks it sees them through. */
export const screenings: readonly Screening[] = [
  { still: 'regatta', ...blueReel },
  { still: 'tram', ...blueReel },
  { still: 'tram', film: { age: 'pink', stock: 'reversal-early' }, look: 'pink-reel.json' },
];

/** What the demonstration wrote before it may write again: its folder is its own. */
const replacing = { force: true };

/** Builds a look, reads the file back and checks it. @returns whether it is good */
async function buildAndCheck(look: Look, output: string): Promise<boolean> {
  await writeSafely(output, buildLook(look, { size: 33 }, maker).bytes, replacing);
  const { lut } = await loadLut(output);
  const findings = checkTable(lut, signalsOf(look), look);
  const good = isGood(findings);
  const amiss = findings.filter(({ pass, severity }) => !pass && severity === 'fault');
  terminal.result(`${good ? 'good ' : 'FAULT'} ${output}: ${look.name}`);
  for (const { sentence } of amiss) terminal.result(`      ${sentence}`);
  return good;
}

/** Writes a demo still, and a preview of a look on it. */
async function screen({ still, film }: Screening, look: Look, folder: string): Promise<void> {
  const picture = renderDemoStill(still, { ...film, bits: 16 });
  const stillPath = join(folder, `${still}-${film.age}.png`);
  await writeSafely(stillPath, (await encodeStill(stillPath, picture)).bytes, replacing);
  const { lut } = buildLook(look, { size: 33 }, maker);
  const [signals, fonts] = [signalsOf(look), loadLabelFonts()];
  const preview = previewLook(lut, signals, picture, look.name, fonts, loadEngine());
  const previewPath = join(folder, `${still}-${film.age}-preview.png`);
  await writeSafely(previewPath, (await encodeStill(previewPath, preview.picture)).bytes, replacing);
  terminal.result(`still ${stillPath}`);
  terminal.result(`      ${previewPath}: through ${look.name}, ${preview.caption}`);
}

/** Builds and checks all ready looks, previews some. @returns whether all looks are good */
export async function demonstrate(folder: string): Promise<boolean> {
  const looks = join(packageFolder, 'looks');
  const files = (await readdir(looks)).filter((file) => file.endsWith('.json')).sort();
  await makeFolder(folder);
  let good = true;
  for (const file of files) {
    const output = join(folder, `${basename(file, '.json')}.cube`);
    good = (await buildAndCheck(await loadLook(join(looks, file)), output)) && good;
  }
  for (const screening of screenings)
    await screen(screening, await loadLook(join(looks, screening.look)), folder);
  return good;
}
