/** A number that the module exports. */
interface Exported {
  readonly value: number;
}

/** What an instance of the compiled module gives: assembly/index.ts says what each does. */
export interface SimdModule {
  readonly memory: { readonly buffer: ArrayBufferLike; grow(pages: number): number };
  readonly nodesAt: Exported;
  readonly workBytes: Exported;
  readonly fixed8: Exported;
  readonly whole16: Exported;
  readonly any8: Exported;
  readonly any16: Exported;
  readonly anyFloat: Exported;
  run(kind: number, from: number, to: number, count: number, channels: number, work: number): void;
  prepareFixed(values: number, size: number): void;
  prepareSingle(values: number, size: number, most: number, sum: number): void;
  setDomain(channel: number, first: number, factor: number): void;
}

/** The kinds of run that the module knows. */
export type RunKind = 'fixed8' | 'whole16' | 'any8' | 'any16' | 'anyFloat';

/** Bytes in a page of the module's memory. WebAssembly Core Specification 1.0 (2019), 4.2.8. */
const pageBytes = 65536;

/** Makes the memory at least so large. @throws RangeError (of the platform) when it cannot be had */
export function growTo({ memory }: SimdModule, bytes: number): void {
  const missing = bytes - memory.buffer.byteLength;
  if (missing > 0) memory.grow(Math.ceil(missing / pageBytes));
}
