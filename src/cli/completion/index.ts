import type { Outline } from '../outline.js';
import { bash } from './bash.js';
import { fish } from './fish.js';
import { zsh } from './zsh.js';

/** A script of each shell that completes the command line, made of its outline. */
export const shells = { bash, zsh, fish } satisfies Record<string, (outlines: readonly Outline[]) => string>;
