import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { sentences } from '../../src/errors/sentence.js';
import { brokenFiles } from './fuzz/mutations.js';
import { corpusOf, type Target, targets } from './fuzz/targets.js';

/** GATELIGHT_FUZZ_RUNS=50000 looks longer, GATELIGHT_FUZZ_SEED elsewhere: see `npm run fuzz` in DEVELOPERS.md. */
const runs = Number(process.env.GATELIGHT_FUZZ_RUNS ?? 300);
const seed = Number(process.env.GATELIGHT_FUZZ_SEED ?? 19650501);
/** No file of this size takes longer than a blink: a reader that does hangs. */
const patienceMs = 120_000 + 20 * runs;

/** What is amiss with what a reader made of a file. It may refuse it, in words; anything else it throws is a fault. */
async function amissWith({ amiss }: Target, bytes: Uint8Array): Promise<string | undefined> {
  try {
    return await amiss(bytes);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const said = sentences(error);
    if (!/^(\/.*\/)?found/.test(said)) return `names no file: ${said}`;
    return /undefined|\[object|NaN/.test(said.replace(/".*?"/g, ''))
      ? `words of a fault: ${said}`
      : undefined;
  }
}

describe.each(Object.entries<Target>(targets))('broken files for the reader of: %s', (name, target) => {
  const corpus = corpusOf(target);

  it.each(corpus)('%s of the corpus is good', async (_, bytes) => {
    expect(await target.amiss(bytes)).toBeUndefined();
  });

  it(
    'are read or refused in words, whatever happened to them',
    async () => {
      process.stdout.write(`${name}: seed ${seed}\n`);
      const files = corpus.map(([, bytes]) => bytes);
      await fc.assert(
        fc.asyncProperty(brokenFiles(files, target.words), async (bytes) => {
          expect(await amissWith(target, bytes)).toBeUndefined();
        }),
        { seed, numRuns: Math.ceil(runs * target.effort) },
      );
    },
    patienceMs,
  );
});
