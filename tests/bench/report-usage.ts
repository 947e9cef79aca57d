// Loaded into the processes of a command that is measured: each tells what it used when it ends.
import { appendFileSync, readFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import { usageFile } from './usage-file.js';

const file = process.env[usageFile];

/** Most memory ever held, KiB: Linux' resource usage would count what the bench held when it started this process, too. */
function mostMemory(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS;
  return Number(/^VmHWM:\s*(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))![1]);
}

if (isMainThread && file !== undefined)
  process.on('exit', () => {
    const used = { ...process.resourceUsage(), maxRSS: mostMemory() };
    appendFileSync(file, `${JSON.stringify(used)}\n`);
  });
