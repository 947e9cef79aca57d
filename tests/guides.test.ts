import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { screenings } from '../src/cli/demonstration.js';
import { renderDemoStill } from '../src/demo/index.js';
import { encodeStill } from '../src/stills/write-still.js';
import { gatelight, projectRoot, temporaryFolder } from './cli/gatelight.js';

const folder = temporaryFolder();
const readme = readFileSync(join(projectRoot, 'README.md'), 'utf8');
const [, guides = ''] = /^## Guides\n([^]*?)^## /m.exec(readme) ?? [];

/** Headings of the guides, and the command lines below each. */
const jobs = guides
  .split(/^### /m)
  .slice(1)
  .map((text) => {
    const [title] = text.split('\n');
    const blocks = [...text.matchAll(/```sh\n([^]*?)```/g)].map(([, lines]) => lines);
    return [title, blocks.join('').trim().split('\n')] as const;
  });

const wordsOf = (line: string) =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain);

describe('the guides of README.md work word for word', () => {
  beforeAll(async () => {
    cpSync(join(projectRoot, 'looks'), join(folder, 'looks'), { recursive: true });
    mkdirSync(join(folder, 'demo'));
    // The demonstration's stills under its names, and of its size: rectangles are marked in them.
    for (const { still, film } of screenings) {
      const name = `demo/${still}-${film.age}.png`;
      const picture = renderDemoStill(still, { ...film, bits: 16 });
      writeFileSync(join(folder, name), (await encodeStill(name, picture)).bytes);
    }
  }, 300_000);

  it('there are three, of command lines alone', () => {
    expect(jobs).toHaveLength(3);
    for (const line of jobs.flatMap(([, lines]) => lines)) expect(line).toMatch(/^gatelight [a-z]/);
  });

  it.each(jobs)(
    '%s',
    (_, lines) => {
      for (const line of lines) {
        const [, ...args] = wordsOf(line);
        const ended = gatelight(args, folder);
        expect(ended.status, `${line}\n${ended.stderr}`).toBe(0);
        const output = args[args.indexOf('-o') + 1];
        if (args.includes('-o')) expect(existsSync(join(folder, output)), line).toBe(true);
        if (args[0] === 'measure') expect(ended.stdout, line).toMatch(/^This reel has lost about/);
      }
    },
    300_000,
  );
});
