import { InputError } from '../errors/input-error.js';
import type { DemoAgeName, DemoStillName } from '../demo/index.js';
import { lampFileOf, readLampFile, withLampSpectrum } from '../look/lamp-file.js';
import { readLook } from '../look/read-look.js';
import { lutFormats } from '../lut/formats/index.js';
import { openCard, setField } from './state/actions.js';
import { newId, shaped } from './state/sheet.js';
import type { Page } from './parts/parts.js';

const extension = (name: string) => name.toLowerCase().replace(/^.*\./, '');
const bytesOf = async (file: File) => new Uint8Array(await file.arrayBuffer());

/** Look and lamp files are a few kilobytes of text. */
const mostTextBytes = 4_000_000;

async function textOf(file: File): Promise<string> {
  if (file.size > mostTextBytes)
    throw new InputError({ file: file.name, what: 'is too large for a look or lamp file', allowed: '4 MB' });
  return file.text();
}

function keepNote(page: Page, kept: boolean): void {
  if (!kept)
    page.store.say(
      'note',
      'keeping',
      'This browser keeps no files here: after a reload the stills must be opened again.',
    );
}

/** Puts a still on the reel. @param seen whether it comes into view */
async function openStill(page: Page, file: File, seen: boolean): Promise<void> {
  const { store, engine } = page;
  const id = newId();
  const added = await engine.desk.call('addStill', { id, name: file.name, bytes: await bytesOf(file) });
  const { kept, ...still } = added;
  store.change(`still ${file.name}`, (sheet) => ({ ...sheet, stills: [...sheet.stills, still] }));
  if (seen) store.look({ still: id });
  keepNote(page, kept);
}

export function openDemoStill(page: Page, still: DemoStillName, age: DemoAgeName): void {
  const { store, engine } = page;
  const id = newId();
  void engine.whileBusy('Drawing a still', async () => {
    const { kept, ...drawn } = await engine.desk.call('addDemoStill', { id, still, age });
    store.change(`drawn still`, (sheet) => ({ ...sheet, stills: [...sheet.stills, drawn] }));
    store.look({ still: id });
  });
}

/** A look file; a lamp file that it names must come with it. */
async function openLook(page: Page, file: File, others: readonly File[]): Promise<void> {
  const look = readLook(await textOf(file), file.name);
  const lampName = lampFileOf(look)?.replace(/^.*[/\\]/, '');
  if (lampName === undefined) return openCard(page.store, shaped(look));
  const lamp = others.find(({ name }) => name === lampName);
  if (lamp === undefined)
    throw new InputError({
      file: file.name,
      field: 'projector.lamp.file',
      what: `the lamp file ${lampName} is not here`,
      hint: 'Choose or drop the look and its lamp file together.',
    });
  openCard(page.store, shaped(withLampSpectrum(look, readLampFile(await textOf(lamp), lamp.name))));
}

async function openTable(page: Page, file: File): Promise<void> {
  const id = newId();
  const read = await page.engine.desk.call('readLut', { id, name: file.name, bytes: await bytesOf(file) });
  openCard(page.store, { kind: 'table', id, name: read.file.title ?? file.name });
}

/** A lamp's spectrum for the look that is shaped. */
async function openLamp(page: Page, file: File): Promise<void> {
  const { store } = page;
  const spectrum = readLampFile(await textOf(file), file.name);
  if (store.card().kind !== 'look')
    throw new InputError({
      file: file.name,
      what: 'is a lamp for a look, and what is looked at is a finished table',
      hint: 'Choose a look or add one, then open the lamp again.',
    });
  setField(store, 'projector.lamp', { spectrum }, `lamp ${file.name}`);
  store.look({ station: 'lamp' });
}

/**
 * Opens whatever was chosen or dropped: stills, look files, tables, a lamp's spectrum. All problems are told together,
 * one a line.
 * The first still comes into view; the others join the reel, and leave alone who is at work on that one already.
 */
export async function openFiles(page: Page, files: readonly File[]): Promise<void> {
  const namesLamps = files.some(({ name }) => extension(name) === 'json');
  const problems: string[] = [];
  const tell = (problem: string) => void (problem !== '' && problems.push(problem));
  let isFirst = true;
  for (const file of files) {
    const kind = extension(file.name);
    if (kind === 'csv' && namesLamps) continue;
    const open = async () => {
      if (kind === 'json') await openLook(page, file, files);
      else if (isLutFile(file.name)) await openTable(page, file);
      else if (kind === 'csv') await openLamp(page, file);
      else {
        refuseMovies(file);
        await openStill(page, file, isFirst).catch((error: unknown) => {
          throw isForeign(file.name) ? notTaken(file.name) : error;
        });
        isFirst = false;
      }
    };
    await page.engine.whileBusy(`Opening ${file.name}`, open, tell);
  }
  page.store.say('problem', 'opening', problems.join('\n'));
}

const lutExtensions: readonly string[] = Object.values(lutFormats).map((format) => format.extension);

const isLutFile = (name: string) => lutExtensions.some((ending) => name.toLowerCase().endsWith(ending));

const stillExtensions = ['.png', '.jpg', '.jpeg', '.tif', '.tiff'];
const accepted = [...stillExtensions, '.json', '.csv', ...lutExtensions];

/** A name that promises nothing that the page takes. */
const isForeign = (name: string) => !accepted.some((ending) => name.toLowerCase().endsWith(ending));

const notTaken = (file: string) =>
  new InputError({
    file,
    what: 'is nothing that this page opens',
    allowed: `stills (PNG, JPEG, TIFF), looks (.json), tables (${lutExtensions.join(', ')}), lamp files (.csv)`,
  });

/** Kinds of movies that browsers, which tell a kind by the name, do not know on every system. */
const movieEndings = /\.(mkv|mov|m4v|avi|mxf|mts|m2ts|dv)$/i;

function refuseMovies({ name, type }: File): void {
  if (type.startsWith('video/') || movieEndings.test(name))
    throw new InputError({
      file: name,
      what: 'is a movie, and this page takes stills',
      hint: `Take some from it: gatelight measure ${/\s/.test(name) ? `"${name}"` : name} --stills 8 --keep FOLDER -o LOOK.json`,
    });
}

/** Lets the user choose files. The field stands in the document until it has answered: elsewhere browsers may drop it. */
export function chooseFiles(page: Page): void {
  const input = Object.assign(document.createElement('input'), {
    type: 'file',
    multiple: true,
    hidden: true,
    accept: accepted.join(),
  });
  input.addEventListener('change', () => void openFiles(page, [...(input.files ?? [])]));
  for (const answered of ['change', 'cancel']) input.addEventListener(answered, () => input.remove());
  document.body.append(input);
  input.click();
}

/** Hands a file to the user. */
export function download(name: string, content: BlobPart, type: string): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** A name as a file may have. */
export const fileStem = (name: string): string =>
  name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 80) || 'look';
