import { compile } from '../../maths/web-assembly.js';

/** Compiles a WebAssembly module that the build has put into the page, in base64. @throws where the browser cannot */
export const compiled = (base64: string): object =>
  compile(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
