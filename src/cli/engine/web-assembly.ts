/** As much of WebAssembly as is used here: Node has it, its types do not (JavaScript API, W3C 2019). */
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

export const { Module, Memory, Instance } = (globalThis as unknown as { WebAssembly: WebAssemblyLike })
  .WebAssembly;
