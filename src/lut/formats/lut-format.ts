import type { Lut } from '../lattice.js';

/** What a file carries beside its table. */
export interface LutFile {
  readonly lut: Lut;
  /** Safe to print: control characters are replaced. */
  readonly title?: string;
  /** The comment lines of the form `# key: value`, in their order, safe to print. */
  readonly comments: readonly (readonly [key: string, value: string])[];
  /** What was read, but not every reader would; whole sentences. */
  readonly notes: readonly string[];
}

/** Reads a file from its bytes as they come. Both throw an InputError as soon as the first fault is certain. */
export interface LutReader {
  write(chunk: Uint8Array): void;
  end(): LutFile;
}

export interface WriteOptions {
  readonly title?: string;
  /** Provenance, one comment line a pair. */
  readonly comments?: readonly (readonly [key: string, value: string])[];
  /** Nothing but size and rows, for devices that stumble over more. */
  readonly plain?: boolean;
  /** Decimals of each number, 6..15. */
  readonly decimals?: number;
}

/** A kind of file that carries a LUT. */
export interface LutFormat {
  readonly title: string;
  readonly source: string;
  /** With its point, in small letters. */
  readonly extension: string;
  /** A title as the file holds it: in printable ASCII, no longer than the format allows. */
  titleOf(title: string): string;
  /** @param file the name that problems are reported under */
  createReader(file: string): LutReader;
  /** The text of a file, ASCII. */
  write(lut: Lut, options?: WriteOptions): string;
  /** The same as bytes, sooner. */
  writeBytes(lut: Lut, options?: WriteOptions): Uint8Array;
}
