// Part of `npm run docs`: remakes the tables of README.md that follow from the code and the looks.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { packageFolder } from './maker.js';
import { remakeTables } from './readme-tables.js';

const path = join(packageFolder, 'README.md');
writeFileSync(path, remakeTables(readFileSync(path, 'utf8')));
