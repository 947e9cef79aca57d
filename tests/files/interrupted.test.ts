import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { holdTemporary, releaseTemporary } from '../../src/files/temporaries.js';
import { temporaryFolder } from './folder.js';

const { path, names } = temporaryFolder();

/** A process that holds one temporary file and has finished with another, then does as told. */
function start(last: string) {
  const source = readFileSync(resolve(import.meta.dirname, '../../src/files/temporaries.ts'), 'utf8');
  const options = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 };
  writeFileSync(path('temporaries.mjs'), ts.transpileModule(source, { compilerOptions: options }).outputText);
  writeFileSync(path('held.part'), '');
  writeFileSync(path('done.cube'), '');
  const script = `
    import { holdTemporary, releaseTemporary } from './temporaries.mjs';
    holdTemporary(${JSON.stringify(path('held.part'))});
    holdTemporary(${JSON.stringify(path('gone.part'))});
    holdTemporary(${JSON.stringify(path('done.cube'))});
    releaseTemporary(${JSON.stringify(path('done.cube'))});
    process.stdout.write('ready');
    ${last}`;
  writeFileSync(path('run.mjs'), script);
  return spawn(process.execPath, [path('run.mjs')], { stdio: ['ignore', 'pipe', 'inherit'] });
}

describe('an interrupted process', () => {
  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'removes its temporaries on %s and still dies of it',
    async (signal) => {
      const child = start('setTimeout(() => undefined, 60_000);');
      await once(child.stdout, 'data');
      child.kill(signal);
      expect(await once(child, 'exit')).toEqual([null, signal]);
      expect(names()).toEqual(['done.cube', 'run.mjs', 'temporaries.mjs']);
    },
  );

  it('waits for a file that is just being made, and removes it', async () => {
    const child = start(`
      import { makeTemporary } from './temporaries.mjs';
      import { writeFile } from 'node:fs/promises';
      const slow = () => new Promise((done) => setTimeout(done, 400)).then(() => writeFile(${JSON.stringify(path('late.part'))}, ''));
      await makeTemporary(${JSON.stringify(path('late.part'))}, slow);
      setTimeout(() => undefined, 60_000);`);
    await once(child.stdout, 'data');
    child.kill('SIGINT');
    expect(await once(child, 'exit')).toEqual([null, 'SIGINT']);
    expect(names()).toEqual(['done.cube', 'run.mjs', 'temporaries.mjs']);
  });

  it('does not touch a file that another has made meanwhile', async () => {
    writeFileSync(path('other.cube'), '');
    const child = start(`
      import { makeTemporary } from './temporaries.mjs';
      import { open } from 'node:fs/promises';
      await makeTemporary(${JSON.stringify(path('other.cube'))}, () => open(${JSON.stringify(path('other.cube'))}, 'wx')).catch(() => undefined);
      process.stdout.write('refused');
      setTimeout(() => undefined, 60_000);`);
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
    while (!said.includes('refused')) await once(child.stdout, 'data');
    child.kill('SIGINT');
    await once(child, 'exit');
    expect(names()).toContain('other.cube');
  });

  it('removes them when it ends by itself, with its own exit code', async () => {
    const child = start('process.exit(2);');
    expect(await once(child, 'exit')).toEqual([2, null]);
    expect(names()).not.toContain('held.part');
  });

  it('leaves the end to a handler of the program', async () => {
    const child = start(`process.on('SIGINT', () => process.exit(7)); setTimeout(() => undefined, 60_000);`);
    await once(child.stdout, 'data');
    // The handler is set in the same turn as the output; one more turn and it is there.
    await new Promise((done) => setTimeout(done, 50));
    child.kill('SIGINT');
    expect(await once(child, 'exit')).toEqual([7, null]);
    expect(names()).not.toContain('held.part');
  });
});

it('listens only while something is held', () => {
  const listeners = () => process.listenerCount('SIGINT') + process.listenerCount('exit');
  const before = listeners();
  holdTemporary(path('a.part'));
  holdTemporary(path('b.part'));
  expect(listeners()).toBe(before + 2);
  releaseTemporary(path('a.part'));
  releaseTemporary(path('b.part'));
  expect(listeners()).toBe(before);
});
