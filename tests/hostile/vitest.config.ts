import { resolve } from 'node:path';
import { defineConfig } from 'vitest/config';

const { GATELIGHT_FUZZ_RUNS, GATELIGHT_FUZZ_SEED } = process.env;

/** Broken files by the ten thousand, another seed each time: `npm run fuzz`. */
export default defineConfig({
  test: {
    root: resolve(import.meta.dirname, '../..'),
    include: ['tests/hostile/fuzz.test.ts'],
    env: {
      GATELIGHT_FUZZ_RUNS: GATELIGHT_FUZZ_RUNS ?? '20000',
      GATELIGHT_FUZZ_SEED: GATELIGHT_FUZZ_SEED ?? String(Math.floor(Math.random() * 2 ** 31)),
    },
  },
});
