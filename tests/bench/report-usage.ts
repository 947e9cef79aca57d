// Loaded into the processes of a command that is measured: each tells what it used when it ends.
import { appendFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';
import { usageFile } from './usage-file.js';

const file = process.env[usageFile];
if (isMainThread && file !== undefined)
  process.on('exit', () => appendFileSync(file, `${JSON.stringify(process.resourceUsage())}\n`));
