import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { gatelight, isPlainRefusal, projectRoot } from './gatelight.js';

/** `gatelight page` as a process of its own, and the address that it prints. */
async function startPage(...args: string[]): Promise<{ process: ChildProcess; url: string }> {
  const main = join(projectRoot, 'dist/src/cli/main.js');
  const page = spawn(process.execPath, [main, 'page', ...args], { stdio: ['ignore', 'pipe', 'ignore'] });
  onTestFinished(() => void page.kill('SIGKILL'));
  const [line] = (await once(page.stdout.setEncoding('utf8'), 'data')) as [string];
  return { process: page, url: /http:\S+/.exec(line)![0] };
}

describe('gatelight page', () => {
  it('serves the built page: its text, script and style', async () => {
    const { url } = await startPage();
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    const text = await (await fetch(url)).text();
    expect(text).toContain('<title>Gatelight</title>');
    const named = [...text.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, name]) => name);
    expect(named.map((name) => name.replace(/^.*\./, '')).sort()).toEqual(['css', 'js']);
    for (const name of named) expect((await fetch(url + name)).status, name).toBe(200);
  });

  it('serves two at a time, each on a port of its own, until it is ended', async () => {
    const [one, two] = [await startPage(), await startPage()];
    expect(one.url).not.toBe(two.url);
    one.process.kill('SIGTERM');
    expect(await once(one.process, 'exit')).toEqual([0, null]);
    await expect(fetch(one.url)).rejects.toThrow();
    expect((await fetch(two.url)).status).toBe(200);
  });

  it('refuses a port that is taken, or none', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    onTestFinished(() => void other.close());
    await once(other, 'listening');
    const { port } = other.address() as AddressInfo;
    const taken = gatelight(['page', '--port', String(port)]);
    expect(isPlainRefusal(taken)).toBe(true);
    expect(taken.stderr).toContain(`port ${port} is taken`);
    expect(isPlainRefusal(gatelight(['page', '--port', '70000']))).toBe(true);
  });
});
