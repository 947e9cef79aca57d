// Part of the build: writes the look file's JSON Schema, for editors, to the path given.
import { writeFileSync } from 'node:fs';
import { lookJsonSchema } from '../look/look-schema.js';

writeFileSync(process.argv[2], `${JSON.stringify(lookJsonSchema(), null, 2)}\n`);
