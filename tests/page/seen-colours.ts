import { join } from 'node:path';
import sharp from 'sharp';
import { readFileSync } from 'node:fs';
import { signalsOf, toScreen } from '../../src/jobs/signal.js';
import { readLook } from '../../src/look/read-look.js';
import { gatelight } from '../cli/gatelight.js';
import { patchCodes, patchSide } from './stills.js';
import type { Table } from './table.js';

/** Colours of the eight patches on the screen, each from the middle of its patch. */
export async function seenPatches({ page }: Table): Promise<number[][]> {
  const bed = (await page.locator('canvas.sight').boundingBox())!;
  const png = await page.screenshot({ clip: bed });
  const { data, info } = await sharp(png).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const [width, height] = [4 * patchSide, 2 * patchSide];
  const scale = Math.min(info.width / width, info.height / height);
  const [left, top] = [(info.width - width * scale) / 2, (info.height - height * scale) / 2];
  return patchCodes.map((_, i) => {
    const x = Math.round(left + ((i % 4) + 0.5) * patchSide * scale);
    const y = Math.round(top + (Math.floor(i / 4) + 0.5) * patchSide * scale);
    return [...data.subarray(3 * (y * info.width + x), 3 * (y * info.width + x) + 3)];
  });
}

/** What `gatelight apply` makes of the patches by a table of 33 points. */
export async function appliedPatches(look: string, still: string, folder: string): Promise<number[][]> {
  const [cube, out] = [join(folder, 'applied.cube'), join(folder, 'applied.png')];
  gatelight(['build', look, '-o', cube, '--force']);
  const { status, stderr } = gatelight(['apply', cube, still, '-o', out, '--force']);
  if (status !== 0) throw new Error(stderr);
  const { data, info } = await sharp(out).raw().toBuffer({ resolveWithObject: true });
  return patchCodes.map((_, i) => {
    const [x, y] = [((i % 4) + 0.5) * patchSide, (Math.floor(i / 4) + 0.5) * patchSide];
    return [...data.subarray(3 * (y * info.width + x), 3 * (y * info.width + x) + 3)];
  });
}

export const greatestDifference = (a: readonly number[][], b: readonly (readonly number[])[]): number =>
  Math.max(...a.flatMap((colour, i) => colour.map((code, c) => Math.abs(code - b[i][c]))));

/** What an ordinary screen shows of the patches where a look's camera wrote them. */
export function recordedPatches(look: string): number[][] {
  const run = toScreen(signalsOf(readLook(readFileSync(look, 'utf8'), look)).input)!;
  return patchCodes.map((codes) => {
    const rgb = Float64Array.from(codes, (code) => code / 255);
    run(rgb, 1);
    return [...rgb].map((code) => Math.round(255 * code));
  });
}
