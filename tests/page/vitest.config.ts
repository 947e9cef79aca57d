import { defineConfig } from 'vitest/config';

/** The page in a real browser: it is built first, and one file runs after the other, since each fills the machine. */
export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ['**/*.browser.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
  },
});
