import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Imports run down this list only; folders on one line do not import one another. */
const layers = [
  ['cli', 'page'],
  ['jobs', 'demo', 'stills', 'clips', 'files'],
  ['measure', 'burn-in'],
  ['look', 'preview', 'capture'],
  ['film', 'projection', 'delivery', 'lut', 'picture'],
  ['colour'],
  ['maths'],
];
const rank = (folder: string) => layers.findIndex((line) => line.includes(folder));
const root = resolve(import.meta.dirname, '..');
const sources = (folder: string) =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => join(folder, name));

/** The files of ours that a file imports, from the project's root. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(/(?:from|import\()\s*'(\.[^']*)'/g)].map((match) =>
    relative(root, resolve(root, dirname(file), match[1])),
  );
}

function complaint(file: string, target: string): string | undefined {
  const [from, to] = [file.split('/')[1], target.split('/')[1]];
  if (target.startsWith('shared/') || to === 'errors' || from === to) return undefined;
  if (!target.startsWith('src/')) return `${file} imports ${target}: outside src/ and shared/`;
  if (from === 'index.ts') return undefined;
  return rank(to) > rank(from) && rank(from) >= 0 ? undefined : `${file}: ${to}/ is not below ${from}/`;
}

describe('layers', () => {
  it('every folder of src has its place', () => {
    const folders = readdirSync(join(root, 'src'), { withFileTypes: true }).filter((entry) =>
      entry.isDirectory(),
    );
    const unplaced = folders.map((entry) => entry.name).filter((name) => name !== 'errors' && rank(name) < 0);
    expect(unplaced).toEqual([]);
  });

  it('imports run down only', () => {
    const complaints = sources('src').flatMap((file) =>
      importsOf(file).flatMap((target) => complaint(file, target) ?? []),
    );
    expect(complaints).toEqual([]);
  });

  it('shared/ imports nothing from src/', () => {
    const complaints = sources('shared').filter((file) =>
      importsOf(file).some((target) => !target.startsWith('shared/')),
    );
    expect(complaints).toEqual([]);
  });
});
