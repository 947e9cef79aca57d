import type { Command } from 'commander';
import { addReel } from './log/add.js';
import { addExport } from './log/export.js';
import { addOrigin } from './log/origin.js';
import { addRebuild } from './log/rebuild.js';
import { addShow } from './log/show.js';

export function addLog(program: Command): void {
  const log = program
    .command('log')
    .summary('the reel log: which reel was recorded how, and with which look')
    .description(
      'Keeps the reel log: a plain text file, one line of JSON a reel, only ever added to. Says which look made a LUT file, which reels were recorded with it, and builds it again.',
    )
    .addHelpText('after', '\nExample:\n  gatelight log show\n');
  for (const add of [addReel, addShow, addExport, addOrigin, addRebuild]) add(log);
}
