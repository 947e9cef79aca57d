import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { openStill } from '../../src/cli/open-still.js';
import { openStillFor } from '../../src/cli/still-for-look.js';
import { screenSignal } from '../../src/jobs/signal.js';
import { drawBars, tagsOf } from '../clips/bars.js';
import { gatelight } from './gatelight.js';
import { encodeClip, packagedEnvironment, packagedTools, temporaryFolder } from '../clips/tools.js';

const folder = temporaryFolder();
const at = (name: string) => join(folder, name);
Object.assign(process.env, packagedEnvironment);
const kind = { pattern: '444', bits: 10, range: 'legal', matrix: 'bt709' } as const;
const clip = encodeClip(packagedTools, at('bars.mkv'), drawBars(kind), tagsOf(kind));
const legal = { ...screenSignal, range: 'legal' } as const;

it('a frame of a movie comes in the codes of the look: 64 and 940 of 1023 for black and white of legal range', async () => {
  const full = (await openStill(`${clip}@f0`)).picture;
  const codes = (await openStillFor(legal, `${clip}@f0`)).picture;
  for (let i = 0; i < full.data.length; i += 101)
    // rounded once to 16 bits
    expect(Math.abs(codes.data[i] - (65535 * 64 + 876 * full.data[i]) / 1023)).toBeLessThanOrEqual(0.5);
  expect((await openStillFor(screenSignal, `${clip}@f0`)).picture).toEqual(full);
});

it('a picture file is taken as it is', async () => {
  await sharp(Uint8Array.of(9, 200, 77, 255), { raw: { width: 1, height: 1, channels: 4 } })
    .png()
    .toFile(at('still.png'));
  const { picture } = await openStillFor(legal, at('still.png'));
  expect([...picture.data]).toEqual([9, 200, 77, 255]);
});

it('apply puts a frame through a look of legal range in that range', async () => {
  const look = { name: 'Nothing changed', camera: { range: 'legal' } };
  writeFileSync(at('legal.json'), JSON.stringify(look));
  const { status, stderr } = gatelight(['apply', at('legal.json'), `${clip}@f0`, '-o', at('frame.tif')]);
  expect({ status, stderr }).toMatchObject({ status: 0 });
  const { data } = (await openStill(at('frame.tif'))).picture;
  const { data: codes } = (await openStillFor(legal, `${clip}@f0`)).picture;
  expect(data.length).toBe(codes.length);
  // 16-bit codes through a table that changes nothing, of doubles: half a code is rounding
  data.forEach((code, i) => expect(Math.abs(code - codes[i])).toBeLessThanOrEqual(1));
});
