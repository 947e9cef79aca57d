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

/** Containers in which FFV1 has no name; in MXF it has one since SMPTE RDD 48, which older versions of ffmpeg do not write. */
const withoutLossless = ['mp4', 'webm'];

/** @throws InputError for a container that cannot hold FFV1 */
export function requireLosslessContainer(path: string): void {
  if (!withoutLossless.includes(containerOf(path))) return;
  throw new InputError({
    file: path,
    what: `lossless FFV1 does not go into a file of this kind`,
    hint: 'Name it .mkv or .mov, or another encoder with --encoder.',
  });
}

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
