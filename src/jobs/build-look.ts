import type { MakeDyeModel } from '../film/dye-model.js';
import { canonicalLook } from '../look/canonical-look.js';
import { compileLook } from '../look/compile-look.js';
import type { Look } from '../look/look-schema.js';
import { latinText } from '../lut/formats/cube/text.js';
import { lutFormats } from '../lut/formats/index.js';
import type { LutFile, LutFormat } from '../lut/formats/lut-format.js';
import { type Lattice, type Lut, sampleLattice } from '../lut/lattice.js';
import type { Run } from '../maths/matrix3.js';
import { signalFromText, type Signals, signalsOf, signalText } from './signal.js';

/** What the edge knows and a job needs. */
export interface Maker {
  readonly version: string;
  /** SHA-256 of a text in UTF-8, as 64 hexadecimal digits. */
  readonly sha256: (text: string) => string;
  /** The fastest way that the machine has to reckon film; left out: the plain way. */
  readonly makeDyeModel?: MakeDyeModel;
}

export interface BuildOptions {
  /** Nodes a side of the lattice, 2..256. */
  readonly size: number;
  /** Title of the file; the look's name when left out. */
  readonly title?: string;
  /** Nothing but size and rows. */
  readonly plain?: boolean;
  /** Kind of file; .cube when left out. */
  readonly format?: LutFormat;
  /** Is told now and then which share of the table is reckoned, 0..1. */
  readonly onShare?: (share: number) => void;
}

/** Which look, version and settings a file was made with. */
export type Provenance = readonly (readonly [key: string, value: string])[];

/** Keys of the provenance comments. */
export const provenanceKeys = {
  maker: 'made with',
  look: 'look',
  hash: 'look SHA-256',
  input: 'takes',
  output: 'gives',
  undone: 'way back from',
  undoneHash: 'undone file SHA-256',
  comesBack: 'comes back',
} as const;

export function provenanceOf(look: Look, { version, sha256 }: Maker): Provenance {
  const { input, output } = signalsOf(look);
  return [
    [provenanceKeys.maker, `gatelight ${version}`],
    [provenanceKeys.look, look.name],
    [provenanceKeys.hash, sha256(canonicalLook(look))],
    [provenanceKeys.input, signalText(input)],
    [provenanceKeys.output, signalText(output)],
  ];
}

/** What a file of ours says of the signals it takes and gives; undefined for another's. */
export function signalsIn({ comments }: Pick<LutFile, 'comments'>): Signals | undefined {
  const said = new Map(comments);
  const read = (key: string) => signalFromText(said.get(key) ?? '');
  const [input, output] = [read(provenanceKeys.input), read(provenanceKeys.output)];
  return input && output && { input, output };
}

/** A LUT and its file. */
export interface WrittenLut<Kind extends Lut = Lut> {
  readonly lut: Kind;
  readonly bytes: Uint8Array;
  /** The same as text, made when it is asked for. */
  readonly text: string;
}

/**
 * A look as a LUT file. The same look, options and version give the same bytes everywhere.
 * @throws InputError for a size that no LUT has
 */
export function buildLook(look: Look, options: BuildOptions, maker: Maker): WrittenLut<Lattice> {
  const { size, onShare } = options;
  const compiled = compileLook(look, maker.makeDyeModel);
  let reckoned = 0;
  const told: Run = (values, count) => {
    compiled(values, count);
    reckoned += count;
    onShare?.(reckoned / size ** 3);
  };
  return writtenLut(sampleLattice(told, size), look, options, maker);
}

/** The file of a LUT made of a look, with where it comes from. */
export function writtenLut<Kind extends Lut>(
  lut: Kind,
  look: Look,
  options: BuildOptions,
  maker: Maker,
): WrittenLut<Kind> {
  const { title = look.name, plain = false, format = lutFormats.cube } = options;
  const bytes = format.writeBytes(lut, { title, plain, comments: provenanceOf(look, maker) });
  return {
    lut,
    bytes,
    get text() {
      return latinText(bytes);
    },
  };
}
