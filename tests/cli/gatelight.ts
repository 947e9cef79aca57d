import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll } from 'vitest';

export const projectRoot = resolve(import.meta.dirname, '../..');
/** The command line as it is built. */
export const builtMain = join(projectRoot, 'dist/src/cli/main.js');

export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the built command line as a process of its own. */
export function gatelight(args: readonly string[], cwd = projectRoot): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtMain, ...args], {
    cwd,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

/**
 * A module for Node to load into a process (`--import`), and into those it starts: each adds a line to a file as it ends.
 * @param what an expression whose value the line is
 */
export const whenItEnds = (file: string, what: string): string =>
  'data:text/javascript,' +
  encodeURIComponent(
    `import { appendFileSync } from 'node:fs';` +
      `process.on('exit', () => appendFileSync(${JSON.stringify(file)}, String(${what}) + '\\n'));`,
  );

/** A folder that is gone after the tests of the file. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'gatelight-test-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** What every refusal must be: exit 2, no result, a line or two of words, no stack trace. */
export function isPlainRefusal({ status, stdout, stderr }: Ended): boolean {
  const lines = stderr.trim().split('\n');
  return (
    status === 2 &&
    stdout === '' &&
    lines.length <= 6 &&
    /^gatelight: ./.test(stderr) &&
    !/\n\s+at /.test(stderr)
  );
}
