/** As much of WebAssembly as is used here: Node and browsers have it, the core's types do not (JavaScript API, W3C 2019). */
export interface WasmMemory {
  readonly buffer: ArrayBufferLike;
  grow(pages: number): number;
}

interface WasmInstance {
  readonly exports: unknown;
}

interface WebAssemblyLike {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Memory: new (limits: { initial: number; maximum?: number; shared?: boolean }) => WasmMemory;
  readonly Instance: new (module: object, imports: { env: { memory: WasmMemory } }) => WasmInstance;
}

/** Asked for each time: where a browser has it switched off, importing this must still do no harm. */
const platform = (): WebAssemblyLike =>
  (globalThis as unknown as { WebAssembly: WebAssemblyLike }).WebAssembly;

/** The most pages that the shared memory may grow to, as it was compiled: 4 GB, taken only as they are used. */
const mostPages = 65536;

/** Memory of one's own. */
export const ownMemory = (): WasmMemory => new (platform().Memory)({ initial: 1 });

/** Memory that threads share. @throws where the platform does not allow it */
export const sharedMemory = (): WasmMemory =>
  new (platform().Memory)({ initial: 1, maximum: mostPages, shared: true });

/** @throws where the platform cannot compile the bytes: it has no SIMD, or may not compile at all */
export const compile = (bytes: Uint8Array): object => new (platform().Module)(bytes);

/**
 * @param module compiled loops, for the kind of memory that is given
 * @returns what they export; the caller says what that is
 */
export const instantiate = <Exports>(module: object, memory: WasmMemory): Exports =>
  new (platform().Instance)(module, { env: { memory } }).exports as Exports;
