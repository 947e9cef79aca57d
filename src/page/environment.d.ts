/** The version that builds the page; set by the build. */
declare const __VERSION__: string;
