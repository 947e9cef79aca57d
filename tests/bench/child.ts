import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What a process of its own took. */
export interface Used {
  /** From its start to its end, as the one waiting for it sees it. */
  readonly passingSeconds: number;
  readonly processorSeconds: number;
  /** The most memory it ever held at once, MB of 10^6 bytes. */
  readonly peakMegabytes: number;
}

const reporter = pathToFileURL(join(import.meta.dirname, 'report-usage.js')).href;

/** Runs a script by Node to its end. @throws Error when it fails */
export function runNode(script: string, args: readonly string[], cwd?: string): Used {
  const start = performance.now();
  const { status, stderr, output } = spawnSync(process.execPath, ['--import', reporter, script, ...args], {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
  });
  const passingSeconds = (performance.now() - start) / 1000;
  if (status !== 0) throw new Error(`${script} ${args.join(' ')} failed (npm run build first?):\n${stderr}`);
  const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(output[3] ?? '') as NodeJS.ResourceUsage;
  return {
    passingSeconds,
    processorSeconds: (userCPUTime + systemCPUTime) / 1e6,
    peakMegabytes: (maxRSS * 1024) / 1e6,
  };
}
