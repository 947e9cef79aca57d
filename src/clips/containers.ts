import { extname } from 'node:path';
import { InputError } from '../errors/input-error.js';

/** Containers that can be written, by a file name's extension, as ffmpeg calls them. */
const containers: Readonly<Record<string, string>> = {
  '.mkv': 'matroska',
  '.mov': 'mov',
  '.mp4': 'mp4',
  '.m4v': 'mp4',
  '.mxf': 'mxf',
  '.avi': 'avi',
  '.webm': 'webm',
  '.nut': 'nut',
};

/** @throws InputError for a name that says no container */
export function containerOf(path: string): string {
  const container = containers[extname(path).toLowerCase()];
  if (container !== undefined) return container;
  throw new InputError({
    file: path,
    what: 'its name does not say what kind of movie file it is to be',
    allowed: Object.keys(containers).join(', '),
    hint: 'A name in .mkv is right for most purposes.',
  });
}
