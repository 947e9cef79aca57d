import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { packageFolder } from '../../src/cli/maker.js';

export interface Served {
  readonly url: string;
  stop(): void;
}

/** `gatelight page` as a user starts it, on a port of its own. */
export async function servedPage(): Promise<Served> {
  const main = join(packageFolder, 'dist/src/cli/main.js');
  const page = spawn(process.execPath, [main, 'page', '--no-open'], { stdio: ['ignore', 'pipe', 'inherit'] });
  const [line] = (await once(page.stdout.setEncoding('utf8'), 'data')) as [string];
  return { url: /http:\S+/.exec(line)![0], stop: () => void page.kill() };
}
