import { join } from 'node:path';
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/gatelight.js';
import { drawnStill } from './stills.js';
import { expectNoFaults, type Table, tables } from './table.js';

const browser = tables();
const width = 640;
let stills: string[];

beforeAll(async () => {
  const folder = temporaryFolder();
  stills = [
    await drawnStill(folder, 'regatta', 'blue-shifted', width),
    await drawnStill(folder, 'tram', 'blue-shifted', width),
  ];
});

/** Puts a mark in the middle of the still, as those do who draw with keys. */
async function mark({ button, page }: Table, kind: string): Promise<void> {
  await button(kind).focus();
  await page.keyboard.press('Enter');
}

describe('measuring a reel', () => {
  it('keeps what was found and the way to take it in sight, however much is marked', async () => {
    const table = await browser.fresh();
    await table.open(...stills);
    for (let marks = 1; marks <= 4; marks++) {
      await mark(table, 'Neutral');
      await expect.poll(() => table.page.locator('.marks li').count()).toBe(marks);
    }
    await table.atRest();
    const take = (await table.page.locator('.measured button').boundingBox())!;
    const controls = (await table.page.locator('.controls').boundingBox())!;
    expect(take.y + take.height).toBeLessThanOrEqual(controls.y + controls.height);
    expectNoFaults(table);
  });

  it('offers no figures of marks that have changed, and none that the look holds already', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(...stills);
    await table.atRest();
    const take = page.locator('.measured button');
    await take.click();
    await expect.poll(() => take.innerText()).toBe('The look holds these');
    expect(await take.isDisabled()).toBe(true);
    await mark(table, 'Neutral');
    await expect.poll(() => take.innerText()).toBe('Measuring again …');
    expect(await take.isDisabled()).toBe(true);
    await table.atRest();
    await expect.poll(() => take.innerText()).toBe('Take these into the look');
    expectNoFaults(table);
  });

  it('measures the others where a still is without colour, and says so', async () => {
    const folder = temporaryFolder();
    const grey = join(folder, 'title.png');
    await sharp(stills[1]).greyscale().toFile(grey);
    const table = await browser.fresh();
    await table.open(grey, ...stills);
    await table.atRest();
    const words = () => table.page.locator('.measured').innerText();
    await expect
      .poll(words)
      .toContain('title.png has no colour, so it tells nothing of dyes: it was not used.');
    expect(await table.page.locator('.measured button').isEnabled()).toBe(true);
    expectNoFaults(table);
  });

  it('lets no mark leave its still', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(stills[0]);
    await mark(table, 'Black');
    const figure = (words: string) => page.getByLabel(`Black 1, pixels ${words}`);
    await figure('from left').fill('5000');
    await figure('from left').press('Enter');
    await expect.poll(() => figure('from left').inputValue()).toBe(String(width - width / 10));
    await figure('wide').fill('5000');
    await figure('wide').press('Enter');
    await expect.poll(() => figure('wide').inputValue()).toBe(String(width / 10));
    await table.atRest();
    expect(await page.locator('.measure .problem').count()).toBe(0);
    expectNoFaults(table);
  });

  it('draws one mark after the other: names of marks are not picked up as text in place of drawing', async () => {
    const table = await browser.fresh(1440, 900);
    const { page } = table;
    await table.open(stills[0]);
    const glass = (await page.locator('.glass').boundingBox())!;
    const place = ([across, down]: readonly [number, number]) =>
      [glass.x + across * glass.width, glass.y + down * glass.height] as const;
    const marks = page.locator('.marks li');
    for (const [i, [kind, from, to]] of (
      [
        ['Black', [0.2, 0.1], [0.7, 0.15]],
        ['Clear', [0.2, 0.4], [0.25, 0.5]],
        ['Clear film', [0.9, 0.2], [0.93, 0.7]],
        ['Black', [0.5, 0.4], [0.55, 0.5]],
        ['Neutral', [0.6, 0.6], [0.65, 0.7]],
      ] as const
    ).entries()) {
      await table.button(kind).click();
      await page.mouse.move(...place(from));
      await page.mouse.down();
      await page.mouse.move(...place(to), { steps: 5 });
      await page.mouse.up();
      await expect.poll(() => marks.count()).toBe(i + 1);
    }
    expect(await page.evaluate(() => getSelection()!.toString())).toBe('');
    expectNoFaults(table);
  });

  it('lays marks over the picture only there', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(stills[0]);
    await mark(table, 'Black');
    const shown = page.locator('.over rect');
    await expect.poll(() => shown.count()).toBe(1);
    await table.button('Clear').click();
    await table.station('File');
    await expect.poll(() => shown.count()).toBe(0);
    expect(await page.locator('.bed.marking').count()).toBe(0);
    await table.station('Stock');
    await expect.poll(() => shown.count()).toBe(1);
    expectNoFaults(table);
  });
});
