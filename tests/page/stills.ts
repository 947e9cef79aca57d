import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { type DemoAgeName, type DemoStillName, renderDemoStill } from '../../src/demo/index.js';

/** A demo still as a file. */
export async function drawnStill(
  folder: string,
  still: DemoStillName,
  age: DemoAgeName,
  width = 640,
): Promise<string> {
  const { data, height } = renderDemoStill(still, { age, width, height: (width * 3) / 4 });
  const file = join(folder, `${still}-${age}.png`);
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(file);
  return file;
}

/** Even patches, 4 x 2, of 64 pixels each: colours that can be found again on the screen. */
export const patchCodes = [
  [13, 13, 13],
  [64, 64, 64],
  [128, 128, 128],
  [242, 242, 242],
  [180, 60, 50],
  [60, 150, 70],
  [50, 70, 170],
  [210, 170, 120],
] as const;
export const patchSide = 64;

export async function patchStill(folder: string): Promise<string> {
  const [width, height] = [4 * patchSide, 2 * patchSide];
  const data = new Uint8Array(3 * width * height);
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    data.set(patchCodes[4 * Math.floor(y / patchSide) + Math.floor(x / patchSide)], 3 * i);
  }
  const file = join(folder, 'patches.png');
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(file);
  return file;
}

/** A 3840 x 2160 still of 16 bits. */
export async function largeStill(folder: string): Promise<string> {
  const [width, height] = [3840, 2160];
  const row = Uint16Array.from({ length: 3 * width }, (_, i) => (i * 40503) & 0xffff);
  const data = new Uint16Array(3 * width * height);
  for (let y = 0; y < height; y++)
    for (let i = 0; i < row.length; i++) data[y * row.length + i] = (y * 25 + (row[i] >> 4)) & 0xffff;
  const file = join(folder, 'large.tif');
  await sharp(Buffer.from(data.buffer), { raw: { width, height, channels: 3, depth: 'ushort' } as never })
    .toColourspace('rgb16')
    .tiff({ compression: 'none' })
    .toFile(file);
  return file;
}

export function brokenFile(folder: string, name: string, content: string | Uint8Array): string {
  const file = join(folder, name);
  writeFileSync(file, content);
  return file;
}
