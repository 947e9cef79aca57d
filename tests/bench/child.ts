import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { usageFile } from './usage-file.js';

/** What a command took, with the processes of Node that it started. */
export interface Used {
  /** From its start to its end, as the one waiting for it sees it. */
  readonly passingSeconds: number;
  readonly processorSeconds: number;
  /**
   * The most memory that each process ever held at once, together, MB of 10^6 bytes: no less than they held at any one
   * time, since what they share counts for each.
   */
  readonly peakMegabytes: number;
}

const reporter = pathToFileURL(join(import.meta.dirname, 'report-usage.js')).href;

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Runs a script by Node to its end. @throws Error when it fails */
export function runNode(script: string, args: readonly string[], cwd?: string): Used {
  const folder = mkdtempSync(join(tmpdir(), 'gatelight-usage-'));
  const file = join(folder, 'usage');
  const env = { ...process.env, [usageFile]: file };
  try {
    const start = performance.now();
    const { status, stderr } = spawnSync(process.execPath, ['--import', reporter, script, ...args], {
      ...{ cwd, env, encoding: 'utf8' },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    const passingSeconds = (performance.now() - start) / 1000;
    if (status !== 0)
      throw new Error(`${script} ${args.join(' ')} failed (npm run build first?):\n${stderr}`);
    const lines = readFileSync(file, 'utf8').trim().split('\n');
    const each = lines.map((line) => JSON.parse(line) as NodeJS.ResourceUsage);
    return {
      passingSeconds,
      processorSeconds: sum(each.map(({ userCPUTime, systemCPUTime }) => userCPUTime + systemCPUTime)) / 1e6,
      peakMegabytes: (sum(each.map(({ maxRSS }) => maxRSS)) * 1024) / 1e6,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
