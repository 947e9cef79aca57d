import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

/** Comparisons with programs that only CI installs: `npx vitest run --config tests/ci/vitest.config.ts`. */
export default defineConfig({
  test: {
    root: resolve(import.meta.dirname, '../..'),
    include: ['tests/ci/**/*.peer.ts'],
    testTimeout: 120_000,
  },
});
