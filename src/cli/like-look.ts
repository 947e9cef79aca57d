import { dirname, isAbsolute, relative, resolve } from 'node:path';
import type { LikeLook } from '../jobs/measure-reel.js';
import { loadLookFile } from './load.js';

type Fields = Record<string, unknown>;

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null;

/** A path beside one file, as it must be written beside another; URLs and absolute paths stay. */
function moved(path: unknown, from: string, to: string): unknown {
  if (typeof path !== 'string' || isAbsolute(path) || path.includes('://')) return path;
  return relative(dirname(resolve(to)), resolve(dirname(from), path)).replaceAll('\\', '/');
}

/** The files that a look names beside itself (lamp, editor's schema), named from where the new look will lie. */
function movedFields(fields: Fields, from: string, to: string): Fields {
  const projector = fields.projector;
  const lamp = isFields(projector) ? projector.lamp : undefined;
  return {
    ...fields,
    ...(fields.$schema === undefined ? {} : { $schema: moved(fields.$schema, from, to) }),
    ...(isFields(projector) && isFields(lamp) && 'file' in lamp
      ? { projector: { ...projector, lamp: { ...lamp, file: moved(lamp.file, from, to) } } }
      : {}),
  };
}

/**
 * Reads a look that another is to be made like.
 * @param output where the other will lie
 * @throws InputError when it, or the lamp file it names, cannot be read
 */
export async function loadLikeLook(path: string, output: string): Promise<LikeLook> {
  const { look, fields } = await loadLookFile(path);
  return { look, fields: movedFields(fields, path, output) };
}
