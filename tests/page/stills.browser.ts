import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { gatelight, projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { roundingOfTheScreen } from '../tolerances.js';
import { appliedPatches, greatestDifference, recordedPatches, seenPatches } from './seen-colours.js';
import { brokenFile, drawnStill, largeStill, patchCodes, patchSide, patchStill } from './stills.js';
import { expectNoFaults, tables } from './table.js';

const folder = temporaryFolder();
const browser = tables();
const look = join(projectRoot, 'looks/warm-stock-and-lamp.json');
let patches: string;

beforeAll(async () => {
  patches = await patchStill(folder);
});

/** The still in other kinds of files. */
async function otherKinds(): Promise<string[]> {
  const still = sharp(await drawnStill(folder, 'regatta', 'pink', 320));
  const kinds = {
    'jpeg.jpg': still.clone().jpeg(),
    'tiff8.tif': still.clone().tiff({ compression: 'lzw' }),
    'tiff16.tif': still.clone().toColourspace('rgb16').tiff({ compression: 'deflate' }),
    'png16.png': still.clone().toColourspace('rgb16').png(),
    'grey.png': still.clone().greyscale().png(),
  };
  return Promise.all(
    Object.entries(kinds).map(async ([name, picture]) => {
      await picture.toFile(join(folder, name));
      return join(folder, name);
    }),
  );
}

describe('stills', () => {
  it('shows the recording as it is, and through a look what the command line makes of it', async () => {
    const table = await browser.fresh();
    await table.open(patches, look);
    await table.atRest();
    const expected = await appliedPatches(look, patches, folder);
    await expect
      .poll(async () => greatestDifference(await seenPatches(table), expected))
      .toBeLessThanOrEqual(roundingOfTheScreen);
    await table.button('Before').click();
    await expect.poll(async () => greatestDifference(await seenPatches(table), patchCodes)).toBe(0);
    expectNoFaults(table);
  });

  it('shows the recording as the look in hand takes it, and says what it takes it as', async () => {
    const table = await browser.fresh();
    const caption = () => table.page.locator('.caption').innerText();
    await table.open(patches, look);
    await table.addLook('Lamp light for an HLG recording');
    await table.atRest();
    expect(await caption()).toContain('taken as HLG, BT.2020');
    await table.button('Before').click();
    const asHlg = recordedPatches(join(projectRoot, 'looks/warm-lamp-for-hlg.json'));
    await expect
      .poll(async () => greatestDifference(await seenPatches(table), asHlg))
      .toBeLessThanOrEqual(roundingOfTheScreen);
    expect(greatestDifference(asHlg, patchCodes)).toBeGreaterThan(roundingOfTheScreen);
    await table.button('Warm stock, lamp light').click();
    await expect.poll(async () => greatestDifference(await seenPatches(table), patchCodes)).toBe(0);
    expect(await caption()).toBe('as recorded');
    expectNoFaults(table);
  });

  it('opens PNG, JPEG and TIFF of 8 and 16 bits together, as frames of one reel, and shows the first', async () => {
    const table = await browser.fresh();
    await table.open(...(await otherKinds()));
    await table.atRest();
    const titles = await table.page
      .locator('.frame:not(.add)')
      .evaluateAll((frames) => frames.map((frame) => (frame as HTMLElement).title));
    const bits = Object.fromEntries(
      titles.map((title) => /^(.*): 320 × 240, (\d+) bit$/.exec(title)!.slice(1)),
    );
    expect(bits).toEqual({
      'jpeg.jpg': '8',
      'tiff8.tif': '8',
      'tiff16.tif': '16',
      'png16.png': '16',
      'grey.png': '8',
    });
    expect(await table.page.locator('.frame[aria-current="true"]').getAttribute('title')).toBe(titles[0]);
    expectNoFaults(table);
  });

  it('opens a 4K still of 16 bits, to pixels and back', async () => {
    const table = await browser.fresh();
    await table.open(await largeStill(folder));
    await table.atRest();
    expect(await table.page.locator('.frame').first().getAttribute('title')).toBe(
      'large.tif: 3840 × 2160, 16 bit',
    );
    await table.button('Pixels').click();
    await expect.poll(() => table.page.locator('.zoom').innerText()).toBe('100 %');
    await table.page.locator('.glass').hover();
    await table.page.mouse.wheel(0, -200);
    await expect.poll(() => table.page.locator('.zoom').innerText()).toBe('165 %');
    await table.screenshot('large-still');
    await table.button('Whole').click();
    await table.button('Turn a quarter to the right').click();
    await expect
      .poll(async () => Number.parseInt(await table.page.locator('.zoom').innerText()))
      .toBeLessThan(15);
    expectNoFaults(table);
  });

  it('says of broken and foreign files what is wrong, and goes on', async () => {
    const table = await browser.fresh();
    const whole = readFileSync(patches);
    const broken: Record<string, string> = {
      [brokenFile(folder, 'cut-short.png', whole.subarray(0, whole.length / 2))]: 'damaged, cut short',
      [brokenFile(folder, 'empty.tif', '')]: 'is empty',
      [brokenFile(folder, 'letter.jpg', 'Dear film club,')]: 'not a picture that can be read',
      [brokenFile(folder, 'torn.json', '{ "name": "Torn", ')]: 'torn.json',
      [brokenFile(folder, 'half.cube', 'LUT_3D_SIZE 2\n0 0 0\n')]: 'half.cube',
      [brokenFile(folder, 'notes.md', 'Dear film club,')]: 'tables (.cube, .clf)',
      [brokenFile(folder, 'reel 3.mp4', 'no still')]:
        'gatelight measure "reel 3.mp4" --stills 8 --keep FOLDER',
    };
    await table.open(...Object.keys(broken), patches);
    const lines = table.page.locator('.messages .line');
    await expect.poll(() => lines.count()).toBe(Object.keys(broken).length);
    expect(await table.page.locator('.messages p').count()).toBe(1);
    const said = await table.page.locator('.messages').innerText();
    for (const words of Object.values(broken)) expect(said).toContain(words);
    expect(said).not.toContain('fault of the page');
    await table.atRest();
    expect(await table.page.locator('.frame canvas').count()).toBe(1);
    await table.screenshot('broken-files');
    expect(await table.complaints()).toEqual([]);
    await table.page.getByLabel('Put this message away').click();
    await expect.poll(() => lines.count()).toBe(0);
    await table.open(Object.keys(broken)[0]);
    await expect.poll(() => lines.count()).toBe(1);
    await table.open(patches);
    await expect.poll(() => lines.count()).toBe(0);
    expectNoFaults(table);
  });

  it('shows marks at the edges of a still whole, with their names', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(patches);
    await table.station('Stock');
    await table.button('Black').focus();
    await page.keyboard.press('Enter');
    const figure = async (words: string, value: number) => {
      await page.getByLabel(`Black 1, pixels ${words}`).fill(String(value));
      await page.keyboard.press('Enter');
    };
    await figure('wide', 4);
    await figure('high', 20);
    // Places are written in hundredths of a pixel.
    const roundingPx = 0.02;
    const bed = (await page.locator('.bed').boundingBox())!;
    for (const [x, y] of [
      [4 * patchSide - 4, 2 * patchSide - 20],
      [4 * patchSide - 4, 0],
      [0, 0],
    ]) {
      await figure('from left', x);
      await figure('from top', y);
      for (const part of ['rect', 'text']) {
        const box = (await page.locator(`.over ${part}`).boundingBox())!;
        const [right, bottom] = [box.x + box.width - bed.x, box.y + box.height - bed.y];
        expect(Math.min(box.x - bed.x, box.y - bed.y)).toBeGreaterThanOrEqual(-roundingPx);
        expect(right).toBeLessThanOrEqual(bed.width + roundingPx);
        expect(bottom).toBeLessThanOrEqual(bed.height + roundingPx);
      }
    }
    expectNoFaults(table);
  });

  it('looks at a .cube file and checks it as the command does', async () => {
    const table = await browser.fresh();
    const cube = join(folder, 'warm.cube');
    gatelight(['build', look, '-o', cube, '--force']);
    await table.open(patches, cube);
    await table.atRest();
    const expected = await appliedPatches(look, patches, folder);
    await expect
      .poll(async () => greatestDifference(await seenPatches(table), expected))
      .toBeLessThanOrEqual(roundingOfTheScreen);
    const { findings } = JSON.parse(gatelight(['check', cube, '--json']).stdout) as {
      findings: { sentence: string }[];
    };
    const told = await table.page.locator('.findings').innerText();
    for (const { sentence } of findings) expect(told).toContain(sentence);
    const path = await table.page.getByRole('navigation').innerText();
    expect(path).toContain('in the table');
    expect(path).not.toContain('as it came');
    await table.screenshot('a-table');
    expectNoFaults(table);
  });

  it('judges a way back as the command does: by how much comes back', async () => {
    const table = await browser.fresh();
    const [cube, back] = [join(folder, 'candle.cube'), join(folder, 'candle-back.cube')];
    gatelight(['build', join(projectRoot, 'looks/candle-warm-old-lamp.json'), '-o', cube, '--force']);
    gatelight(['undo', cube, '-o', back, '--force']);
    await table.open(patches, back);
    await table.atRest();
    const said = gatelight(['check', back, '--json']);
    expect(said.status).toBe(0);
    const { findings } = JSON.parse(said.stdout) as { findings: { sentence: string }[] };
    const told = await table.page.locator('.findings').innerText();
    for (const { sentence } of findings) expect(told).toContain(sentence);
    expect(await table.page.locator('.judgement h2').innerText()).toContain('Good');
    expectNoFaults(table);
  });
});
