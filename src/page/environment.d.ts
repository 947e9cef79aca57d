/** The version that builds the page; set by the build. */
declare const __VERSION__: string;
/** The compiled film loops, a WebAssembly module in base64; set by the build. */
declare const __FILM_ENGINE__: string;
/** The compiled loops that put pictures through tables, likewise. */
declare const __APPLY_ENGINE__: string;
