import { readdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { type DemoStillName, type DemoStillOptions, renderDemoStill } from '../demo/index.js';
import { makeFolder } from '../files/make-folder.js';
import { checkTarget, type WriteOptions, writeSafely } from '../files/write-beside-then-rename.js';
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

const cubePath = (folder: string, lookFile: string) => join(folder, `${basename(lookFile, '.json')}.cube`);
const stillPath = (folder: string, { still, film }: Screening) => join(folder, `${still}-${film.age}.png`);
const previewPath = (folder: string, { still, film }: Screening) =>
  join(folder, `${still}-${film.age}-preview.png`);

/** Builds a look, reads the file back and checks it. @returns whether it is good */
async function buildAndCheck(look: Look, output: string, options: WriteOptions): Promise<boolean> {
  await writeSafely(output, buildLook(look, { size: 33 }, maker).bytes, options);
  const { lut } = await loadLut(output);
  const findings = checkTable(lut, signalsOf(look), look);
  const good = isGood(findings);
  const amiss = findings.filter(({ pass, severity }) => !pass && severity === 'fault');
  terminal.result(`${good ? 'good ' : 'FAULT'} ${output}: ${look.name}`);
  for (const { sentence } of amiss) terminal.result(`      ${sentence}`);
  return good;
}

/** Writes a demo still, and a preview of a look on it. */
async function screen(
  screening: Screening,
  look: Look,
  folder: string,
  options: WriteOptions,
): Promise<void> {
  const picture = renderDemoStill(screening.still, { ...screening.film, bits: 16 });
  const [still, seen] = [stillPath(folder, screening), previewPath(folder, screening)];
  await writeSafely(still, (await encodeStill(still, picture)).bytes, options);
  const { lut } = buildLook(look, { size: 33 }, maker);
  const [signals, fonts] = [signalsOf(look), loadLabelFonts()];
  const preview = previewLook(lut, signals, { name: still, picture }, look.name, fonts, loadEngine());
  await writeSafely(seen, (await encodeStill(seen, preview.picture)).bytes, options);
  terminal.result(`still ${still}`);
  terminal.result(`      ${seen}: through ${look.name}, ${preview.caption}`);
}

/**
 * Builds and checks all ready looks, previews some. @returns whether all looks are good
 * @throws InputError before anything is written, for a file that is there and may not be replaced
 */
export async function demonstrate(folder: string, options: WriteOptions): Promise<boolean> {
  const looks = join(packageFolder, 'looks');
  const files = (await readdir(looks)).filter((file) => file.endsWith('.json')).sort();
  await makeFolder(folder);
  const targets = [
    ...files.map((file) => cubePath(folder, file)),
    ...screenings.flatMap((screening) => [stillPath(folder, screening), previewPath(folder, screening)]),
  ];
  for (const target of targets) await checkTarget(target, options);
  let good = true;
  for (const file of files) {
    const look = await loadLook(join(looks, file));
    good = (await buildAndCheck(look, cubePath(folder, file), options)) && good;
  }
  for (const screening of screenings)
    await screen(screening, await loadLook(join(looks, screening.look)), folder, options);
  return good;
}
