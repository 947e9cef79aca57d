import type { LutFormat } from '../lut/formats/lut-format.js';
import { noteAll } from './report.js';

/** Says how a title stands in a LUT file, where that is not as it was asked for. */
export function noteTitle(file: string, title: string, format: LutFormat): void {
  const written = format.titleOf(title);
  if (written !== title)
    noteAll(file, [
      `its title is written "${written}": such a file takes plain ASCII, in one line, without double quotes`,
    ]);
}
