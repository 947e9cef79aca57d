import { Option } from 'commander';
import type { StillSignal } from '../capture/still-light.js';
import { frameNamed, namesMovie } from '../clips/clip-name.js';
import { transferFunctions } from '../colour/transfer-functions/index.js';
import { takenAs } from '../jobs/taken-as.js';
import { type Camera, cameraSchema } from '../look/sections/camera.js';
import { type Encoding, transferFunctionOf } from '../look/sections/signal.js';
import { namesOf } from '../look/sections/section.js';
import type { Picture } from '../picture/picture.js';
import { loadLook } from './load.js';
import { coloursTagged, tagsAgainst } from './colour-tags.js';
import { openClip, openStill } from './open-still.js';
import { type ClipOptions, nameOption, numberOption } from './options.js';
import { noteAll } from './report.js';

/** What commands that read stills ask about the camera. */
export interface CameraOptions extends ClipOptions {
  readonly encoding?: Encoding;
  readonly like?: string;
  readonly ceiling?: number;
}

export const encodingOption = () =>
  nameOption(
    '--encoding <name>',
    'transfer function the stills were written with (when left out: as --like or a movie’s tags say, else srgb)',
    namesOf(transferFunctions),
  );

export const ceilingOption = (when = '') =>
  new Option(
    '--ceiling <percent>',
    `${when}where the camera’s channels end, per cent of the scale, if below its last code`,
  ).argParser(numberOption('--ceiling', 1, 100));

/** What stills were written with, as far as it is said beside a look: by `--encoding`, then by a movie's tags. */
export type Written = Partial<Pick<Camera, 'encoding' | 'primaries'>>;

/**
 * What is said of how stills were written: by `--encoding`; without it and without `--like` by the tags of the movies that
 * frames are of, which is told in a line, as is where tags say otherwise than `--like`.
 * @param names stills as given, or a movie
 * @param camera as the look of `--like` says
 */
export async function writtenAs(
  options: CameraOptions,
  names: readonly string[],
  camera?: Camera,
): Promise<Written> {
  const { encoding } = options;
  const given = encoding === undefined ? {} : { encoding };
  const files = await Promise.all(
    names.map(async (name) => (namesMovie(name) ? name : (await frameNamed(name))?.clip)),
  );
  let written: Written | undefined;
  for (const file of new Set(files)) {
    if (file === undefined) continue;
    const { colour } = await openClip(file, options);
    const tagged: Written = camera === undefined ? { ...coloursTagged(colour), ...given } : given;
    written ??= tagged;
    const taken = { ...(camera ?? cameraSchema.parse({})), ...written };
    const against = encoding === undefined ? tagsAgainst(colour, taken) : undefined;
    noteAll(file, against === undefined ? takenByTags(written, given) : [against]);
  }
  // Nothing in a picture's file says it: a still of another camera would come out in wrong colours unnoticed.
  if (camera !== undefined && options.like !== undefined && files.includes(undefined)) {
    const taken = takenAs({ ...camera, ...given });
    noteAll(options.like, taken === '' ? [] : [`stills are ${taken}, as its camera section says`]);
  }
  return written ?? given;
}

function takenByTags(written: Written, given: Written): string[] {
  const usual = cameraSchema.parse({});
  const unusual = (['encoding', 'primaries'] as const).filter(
    (what) => written[what] !== undefined && given[what] === undefined && written[what] !== usual[what],
  );
  return unusual.length === 0
    ? []
    : [
        `taken as ${unusual.map((what) => written[what]).join(' and ')}, as its tags say` +
          (unusual.includes('encoding') ? '; --encoding says otherwise' : ''),
      ];
}

/** The camera section of `--like`, with what is said of the stills over it; the defaults of a look where nothing is said. */
export async function cameraOf(options: CameraOptions, names: readonly string[]): Promise<Camera> {
  const camera = options.like === undefined ? undefined : (await loadLook(options.like)).camera;
  return { ...(camera ?? cameraSchema.parse({})), ...(await writtenAs(options, names, camera)) };
}

/** How stills of a camera stand for light. */
export function stillSignalOf({ encoding, range }: Camera, ceilingPercent: number | undefined): StillSignal {
  const { decode } = transferFunctionOf(encoding);
  return { decode, range, ...(ceilingPercent === undefined ? {} : { ceiling: ceilingPercent / 100 }) };
}

/** Reads stills one after the other, telling what their reader has to say, of a movie once. */
export async function loadStills(
  paths: readonly string[],
  choice: ClipOptions = {},
): Promise<{ name: string; picture: Picture }[]> {
  const stills: { name: string; picture: Picture }[] = [];
  const told = new Set<string>();
  for (const path of paths) {
    const { picture, notes } = await openStill(path, choice);
    const file = (await frameNamed(path))?.clip ?? path;
    const unsaid = notes.filter((note) => !told.has(`${file}: ${note}`));
    for (const note of unsaid) told.add(`${file}: ${note}`);
    noteAll(file, unsaid);
    stills.push({ name: path, picture });
  }
  return stills;
}
