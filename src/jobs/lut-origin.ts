import type { Look } from '../look/look-schema.js';
import type { LutFile, LutFormat } from '../lut/formats/lut-format.js';
import { lutFormats } from '../lut/formats/index.js';
import type { Lut } from '../lut/lattice.js';
import { buildCurves } from './build-curves.js';
import { buildLook, type Maker, provenanceKeys } from './build-look.js';

/** What a LUT file says of how it was made. */
export interface LutOrigin {
  /** The look's name and the SHA-256 of its contents. */
  readonly look?: { readonly name: string; readonly sha256: string };
  /** Of a way back: the LUT file that it undoes, by title and SHA-256. */
  readonly undoes?: { readonly name: string; readonly sha256: string };
  /** Code values that it takes and gives: transfer function, primaries, range. */
  readonly takes?: string;
  readonly gives?: string;
  /** Version of the program that made it. */
  readonly version?: string;
  readonly title?: string;
  readonly kind: Lut['kind'];
  /** Nodes a side of a 3D LUT, entries of a 1D LUT. */
  readonly size: number;
}

const program = 'gatelight ';

/** Reads the provenance comments of a file of ours; of another's only kind and size are known. */
export function lutOrigin({ lut, title, comments }: LutFile): LutOrigin {
  const said = new Map(comments);
  const source = (nameKey: string, hashKey: string) => {
    const [name, sha256 = ''] = [said.get(nameKey), said.get(hashKey)];
    return name !== undefined && /^[0-9a-f]{64}$/.test(sha256) ? { name, sha256 } : undefined;
  };
  const look = source(provenanceKeys.look, provenanceKeys.hash);
  const undoes = source(provenanceKeys.undone, provenanceKeys.undoneHash);
  const [takes, gives] = [said.get(provenanceKeys.input), said.get(provenanceKeys.output)];
  const maker = said.get(provenanceKeys.maker);
  return {
    ...(look === undefined ? {} : { look }),
    ...(undoes === undefined ? {} : { undoes }),
    ...(takes === undefined ? {} : { takes }),
    ...(gives === undefined ? {} : { gives }),
    ...(maker?.startsWith(program) ? { version: maker.slice(program.length) } : {}),
    ...(title === undefined ? {} : { title }),
    kind: lut.kind,
    size: lut.size,
  };
}

/**
 * Builds a file again from its look, with the size, kind, title and plainness that the file itself shows. The same
 * version gives the same bytes.
 * @throws InputError for curves of a look that mixes channels
 */
export function rebuildLut(
  file: LutFile,
  look: Look,
  maker: Maker,
  format: LutFormat = lutFormats.cube,
): string {
  // A file of ours without a title was asked for so: the look's name would give it one.
  const { kind, size, title = '', version } = lutOrigin(file);
  const plain = title === '' && version === undefined;
  const asked = { size, plain, format, title };
  return (kind === '1d' ? buildCurves : buildLook)(look, asked, maker).text;
}

/** Largest difference between two tables; undefined where kind, size or domain differ. */
export function tableDifference(a: Lut, b: Lut): number | undefined {
  const shape = ({ kind, size, domainMin, domainMax }: Lut) => [kind, size, domainMin, domainMax].join(' ');
  if (shape(a) !== shape(b)) return undefined;
  return a.values.reduce((most, value, i) => Math.max(most, Math.abs(value - b.values[i])), 0);
}
