import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Look } from '../../src/look/look-schema.js';
import { readLook } from '../../src/look/read-look.js';

/** The project's own folder, from where the bench is compiled to. */
export const root = join(import.meta.dirname, '../../../..');

/** The built program. */
export const program = join(root, 'dist/src/cli/main.js');

/** The ready looks' file names. */
export const lookFiles = readdirSync(join(root, 'looks')).sort();

/** A ready look in which film is solved twice, behind the gate light and behind the lamp: the slowest kind. */
export const usualLook = 'warm-stock-and-lamp.json';

/** One in which film is solved once. */
export const otherLook = 'xenon-hall.json';

export const loadReadyLook = (file: string): Look =>
  readLook(readFileSync(join(root, 'looks', file), 'utf8'), file);
