import { spawn } from 'node:child_process';

/** What each system calls 'open this in the usual program'. */
const openers: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  darwin: ['open'],
  win32: ['cmd', '/c', 'start', ''],
};

/** Opens an address in the usual browser; where there is none nothing happens, since the address is printed anyway. */
export function openBrowser(url: string): void {
  const [command, ...before] = openers[process.platform] ?? ['xdg-open'];
  spawn(command, [...before, url], { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}
