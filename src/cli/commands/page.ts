import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Command } from 'commander';
import { InputError } from '../../errors/input-error.js';
import { packageFolder } from '../maker.js';
import { openBrowser } from '../open-browser.js';
import { wholeNumber } from '../options.js';
import { terminal } from '../report.js';
import { servePage } from '../serve-page.js';

/** Tried first, so that the browser finds again what it kept; any free port where it is taken. */
const usualPort = 8316;

interface Options {
  readonly port?: number;
  readonly open: boolean;
}

function listenProblem(error: unknown, port: number): InputError {
  const { code } = error as NodeJS.ErrnoException;
  const what =
    code === 'EADDRINUSE'
      ? `port ${port} is taken by another program`
      : `port ${port} cannot be opened (${code})`;
  return new InputError({ field: '--port', what, hint: 'Leave it out, and a free one is found.' });
}

export function addPage(program: Command): void {
  program
    .command('page')
    .summary('the light table: the whole job in a browser, with the picture in sight')
    .description(
      'Serves the light table to this computer’s browser, and to no other computer, until it is ended with Ctrl C. ' +
        'Nothing is uploaded: stills and looks stay in the browser.',
    )
    .option(
      '--port <n>',
      `port on this computer (${usualPort}, or a free one)`,
      wholeNumber('--port', 1, 65535),
    )
    .option('--no-open', 'print the address and leave the browser alone')
    .addHelpText('after', '\nExample:\n  gatelight page\n')
    .action(async ({ port, open }: Options) => {
      const folder = join(packageFolder, 'dist', 'page');
      if (!existsSync(join(folder, 'index.html')))
        throw new InputError({ what: 'the page is not built', hint: 'Run `npm run build` first.' });
      const page = await servePage(folder, port === undefined ? [usualPort, 0] : [port]).catch(
        (error: unknown) => {
          throw listenProblem(error, port ?? usualPort);
        },
      );
      terminal.result(`The light table: ${page.url}`);
      terminal.note('Open this address in a browser on this computer. Ctrl C ends it.');
      // Somebody sits before a terminal; a script that reads the address opens it itself.
      if (open && process.stdout.isTTY) openBrowser(page.url);
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void page.close());
    });
}
