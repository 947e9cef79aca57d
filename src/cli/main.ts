#!/usr/bin/env node
import { runInSecondProcess, takesManyFrames } from './second-process.js';

const words = process.argv.slice(2);
if (!(takesManyFrames(words) && (await runInSecondProcess(words)))) {
  // Loaded only now: a process that waits for a second one is not to hold it too.
  const { run } = await import('./run.js');
  await run(words);
}
