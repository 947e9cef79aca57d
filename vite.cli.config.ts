import { resolve } from 'node:path';
import { defineConfig } from 'vite';

/**
 * The command line in a few files, in place of the many that the compiler wrote: to find and read hundreds of small
 * modules takes longer than most commands. What a command loads when it is asked for stays a file of its own.
 */
export default defineConfig({
  root: import.meta.dirname,
  ssr: { noExternal: ['commander', 'zod'] },
  build: {
    ssr: resolve(import.meta.dirname, 'src/cli/main.ts'),
    outDir: resolve(import.meta.dirname, 'dist/src/cli'),
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rolldownOptions: {
      // Constants stay const: as var they are looked up, which makes a build a quarter slower.
      output: { chunkFileNames: 'bundled/[name].js', topLevelVar: false },
      checks: { bundlerTimings: false },
    },
  },
});
