// Part of the build: writes the manual page to the path given.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { manPage } from './man-page.js';
import { version } from './maker.js';
import { outlines } from './outline.js';
import { makeProgram } from './program.js';

mkdirSync(dirname(process.argv[2]), { recursive: true });
writeFileSync(process.argv[2], manPage(outlines(await makeProgram()), version));
