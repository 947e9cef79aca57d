// A process of its own: sharp decodes and encodes the stills of a folder, 8 bits and two at a time, with the settings that our
// own stills are written with, and does nothing else to them.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { encoders, kindOfName } from '../../../src/stills/write-still.js';

const [, , from, to] = process.argv;

sharp.cache(false);
const left = readdirSync(from).sort();

/** With the settings that our own stills of 8 bits are written with. */
async function worker(): Promise<void> {
  for (let name = left.shift(); name !== undefined; name = left.shift())
    await encoders[kindOfName(name)](sharp(join(from, name)), 8).toFile(join(to, name));
}

await Promise.all([worker(), worker()]);
