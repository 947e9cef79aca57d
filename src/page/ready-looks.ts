import { readLook } from '../look/read-look.js';
import { lampFileOf } from '../look/lamp-file.js';
import type { Look } from '../look/look-schema.js';

const texts = import.meta.glob('../../looks/*.json', { query: '?raw', import: 'default', eager: true });

/** The ready looks of the project that need no other file, as they stand in looks/. */
export const readyLooks: readonly Look[] = Object.entries(texts)
  .map(([file, text]) => readLook(text as string, file))
  .filter((look) => lampFileOf(look) === undefined);
