import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import type { Problem } from '../../src/errors/input-error.js';

/** A folder of its own for each test of the file, removed afterwards. */
export function temporaryFolder(): {
  readonly path: (name: string) => string;
  readonly names: () => string[];
} {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'gatelight-test-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
  return { path: (name) => join(folder, name), names: () => readdirSync(folder).sort() };
}

/** The one problem of the InputError that the work must end with. */
export async function problemOf(work: Promise<unknown>): Promise<Problem> {
  const error = await work.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(error instanceof InputError)) throw new Error(`no InputError, but ${String(error)}`);
  if (error.problems.length !== 1) throw new Error(`${error.problems.length} problems`);
  return error.problems[0];
}
