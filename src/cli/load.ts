import { dirname, isAbsolute, join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { InputError } from '../errors/input-error.js';
import { readTextBounded, streamFile } from '../files/read-bounded.js';
import { signalsIn } from '../jobs/build-look.js';
import { screenSignals, type Signals, signalsOf } from '../jobs/signal.js';
import { compileLook } from '../look/compile-look.js';
import { lampFileOf, readLampFile, withLampSpectrum } from '../look/lamp-file.js';
import type { Look } from '../look/look-schema.js';
import { checkLook, readFields } from '../look/read-look.js';
import { lutFormatOf } from '../lut/formats/index.js';
import type { LutFile } from '../lut/formats/lut-format.js';
import { type Lattice, latticeSteps, type Lut } from '../lut/lattice.js';
import type { Run } from '../maths/matrix3.js';
import { namesLook, requireLookName, requireLutName, requireSourceName } from './kind-of-name.js';
import { maker } from './maker.js';
import { noteAll } from './report.js';

/** Look and lamp files are a few kilobytes of text. */
const mostTextBytes = 4_000_000;

/** What is wrong with a lamp file, with the look that asks for it. */
function askedBy(look: string, error: unknown): unknown {
  if (!(error instanceof InputError)) return error;
  return new InputError(
    error.problems.map(({ file, line, what, ...rest }) => ({
      ...rest,
      file: look,
      field: 'projector.lamp.file',
      what: `${file}${line === undefined ? '' : `, line ${line}`}: ${what}`,
    })),
  );
}

async function loadLamp(lamp: string, look: string): Promise<ReturnType<typeof readLampFile>> {
  const path = isAbsolute(lamp) ? lamp : join(dirname(look), lamp);
  try {
    return readLampFile(await readTextBounded(path, mostTextBytes), path);
  } catch (error) {
    throw askedBy(look, error);
  }
}

/** Reads a look file, and the lamp file it may name beside it; gives the file's own fields too. */
export async function loadLookFile(path: string): Promise<{ look: Look; fields: Record<string, unknown> }> {
  requireLookName(path);
  const fields = readFields(await readTextBounded(path, mostTextBytes, { emptyAllowed: true }), path);
  const look = checkLook(fields, path);
  const lamp = lampFileOf(look);
  return {
    look: lamp === undefined ? look : withLampSpectrum(look, await loadLamp(lamp, path)),
    fields: fields as Record<string, unknown>,
  };
}

/** The look alone. */
export const loadLook = async (path: string): Promise<Look> => (await loadLookFile(path)).look;

/** Reads a LUT file as its bytes come. @param also is handed the bytes too, to take their hash */
export async function loadLut(path: string, also?: (bytes: Uint8Array) => void): Promise<LutFile> {
  requireLutName(path);
  const reader = lutFormatOf(path).createReader(path);
  await streamFile(path, (bytes) => {
    also?.(bytes);
    reader.write(bytes);
  });
  return reader.end();
}

/** What is noted where a file does not say it. */
export const signalsUnknown = 'does not say which code values it takes and gives: taken as sRGB';

/** A look, whether as a look file or as a LUT. */
export interface Source {
  readonly lut: Lut;
  readonly signals: Signals;
  readonly name: string;
}

/** The same while the table of a look file is still being worked out: what needs it only later may begin already. */
export interface ComingSource extends Omit<Source, 'lut'> {
  readonly lut: Promise<Lut>;
}

/** Nodes a side when a look file is used without building it. */
const usualSize = 33;

async function lutSource(path: string): Promise<Source> {
  const file = await loadLut(path);
  const known = signalsIn(file);
  noteAll(path, file.notes);
  if (known === undefined) noteAll(path, [signalsUnknown]);
  return {
    lut: file.lut,
    signals: known ?? screenSignals,
    name: file.title ?? path,
  };
}

/** Milliseconds in which others get an answer or two from the disk. */
const turn = 2;

/** Lets others have their turn between two steps. */
async function sampleInTurns(transform: Run, size: number): Promise<Lattice> {
  const steps = latticeSteps(transform, size);
  for (;;) {
    await setTimeout(turn);
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** As {@link loadSource}, what takes longest still to come. @throws InputError for all that is wrong with the file */
export async function openSource(path: string): Promise<ComingSource> {
  requireSourceName(path);
  if (!namesLook(path)) {
    const source = await lutSource(path);
    return { ...source, lut: Promise.resolve(source.lut) };
  }
  const look = await loadLook(path);
  const lut = sampleInTurns(compileLook(look, maker.makeDyeModel), usualSize);
  // It fails for whoever waits for it; nobody may.
  lut.catch(() => undefined);
  return { lut, signals: signalsOf(look), name: look.name };
}

/** Reads a look file or a LUT by its extension. */
export async function loadSource(path: string): Promise<Source> {
  const source = await openSource(path);
  return { ...source, lut: await source.lut };
}
