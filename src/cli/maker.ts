import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import type { MakeDyeModel } from '../film/dye-model.js';
import type { Maker } from '../jobs/build-look.js';
import { loadFilm } from './engine/load-film.js';

const manifest = createRequire(import.meta.url).resolve('gatelight/package.json');

/** The package's own folder, found from the built files as from the sources. */
export const packageFolder = dirname(manifest);

export const version = (JSON.parse(readFileSync(manifest, 'utf8')) as { version: string }).version;

let film: MakeDyeModel | undefined;

export const maker: Maker = {
  version,
  sha256: (text) => createHash('sha256').update(text, 'utf8').digest('hex'),
  /** Loaded when it is first asked for. */
  get makeDyeModel() {
    return (film ??= loadFilm(packageFolder));
  },
};
