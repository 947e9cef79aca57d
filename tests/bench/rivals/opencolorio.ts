import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { height, width } from '../frame.js';
import { root } from '../project.js';
import { median } from '../rounds.js';

/** Debian's python3-pyopencolorio belongs to Debian's own Python. */
const python = existsSync('/usr/bin/python3') ? '/usr/bin/python3' : 'python3';
const script = join(root, 'tests/bench/rivals/opencolorio.py');

const ask = (...words: readonly (string | number)[]) =>
  spawnSync(python, [script, ...words.map(String)], { encoding: 'utf8' });

/** OpenColorIO, by its Python binding; times are processor seconds, the median of a few runs in one process. */
export interface OpenColorIO {
  readonly version: string;
  loadSeconds(lutFile: string): number;
  /** Undefined where its Python lacks numpy, by which pictures are handed over. */
  readonly applySeconds: ((lutFile: string, frameFile: string) => number) | undefined;
}

/** Runs in one process, of which the median counts. */
const runs = 3;

function seconds(...words: readonly (string | number)[]): number {
  const { status, stdout, stderr } = ask(...words, runs);
  if (status !== 0) throw new Error(`OpenColorIO failed: ${words.join(' ')}\n${stderr}`);
  return median(JSON.parse(stdout) as number[]);
}

/** Undefined where it is not installed. */
export function findOpenColorIO(): OpenColorIO | undefined {
  const { status, stdout } = ask('about');
  if (status !== 0) return undefined;
  const about = JSON.parse(stdout) as { version: string; pictures: boolean };
  return {
    version: about.version,
    loadSeconds: (lutFile) => seconds('load', lutFile),
    applySeconds: about.pictures
      ? (lutFile, frameFile) => seconds('apply', lutFile, frameFile, width, height)
      : undefined,
  };
}
