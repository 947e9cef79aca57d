// A process of its own: sharp decodes and encodes the stills of a folder, two at a time, and does nothing else to them.
import { readdirSync } from 'node:fs';
import { extname, join } from 'node:path';
import sharp, { type Sharp } from 'sharp';

const [, , from, to] = process.argv;

/** The settings that our own stills are written with (src/stills/write-still.ts). */
const encode: Readonly<Record<string, (still: Sharp) => Sharp>> = {
  '.png': (still) => still.png({ compressionLevel: 6 }),
  '.tif': (still) => still.tiff({ compression: 'lzw', predictor: 'horizontal' }),
};

sharp.cache(false);
const left = readdirSync(from).sort();

async function worker(): Promise<void> {
  for (let name = left.shift(); name !== undefined; name = left.shift())
    await encode[extname(name)](sharp(join(from, name))).toFile(join(to, name));
}

await Promise.all([worker(), worker()]);
