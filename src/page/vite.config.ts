import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

const root = resolve(import.meta.dirname, '../..');
/** The page holds compiled loops whole, since one that was opened from the disk cannot fetch a file beside it. */
const compiled = (file: string) => JSON.stringify(readFileSync(resolve(root, 'dist', file), 'base64'));
const { version } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')) as { version: string };

/**
 * Browsers load no modules and no cross-origin marks from a folder on disk: one plain deferred script instead, so that
 * the built page also opens by a double click.
 */
const plainScript: Plugin = {
  name: 'plain-script',
  enforce: 'post',
  transformIndexHtml: (html) => html.replaceAll(' type="module"', ' defer').replaceAll(' crossorigin', ''),
};

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  define: {
    __VERSION__: JSON.stringify(version),
    __FILM_ENGINE__: compiled('film-engine.wasm'),
    __APPLY_ENGINE__: compiled('apply-engine.wasm'),
  },
  plugins: [plainScript],
  worker: { format: 'iife' },
  build: {
    outDir: resolve(root, 'dist/page'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    cssCodeSplit: false,
    modulePreload: false,
    chunkSizeWarningLimit: 2000,
    rolldownOptions: { output: { format: 'iife' }, checks: { bundlerTimings: false } },
  },
});
