import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { drawnStill, patchStill } from './stills.js';
import { expectNoFaults, openTable, type Table, tables } from './table.js';

const folder = temporaryFolder();
const browser = tables();
let still: string;
let patches: string;

beforeAll(async () => {
  [still, patches] = [await drawnStill(folder, 'tram', 'blue-shifted', 320), await patchStill(folder)];
});

describe('what was done', () => {
  it('is still there after a reload: stills, looks, marks, view and undo', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(still, patches);
    await table.addLook('Candle-warm old lamp');
    await table.station('Stock');
    await table.button('Black').focus();
    await page.keyboard.press('Enter');
    await table.button('Split').click();
    await page.getByLabel('Name of the look').fill('Boathouse');
    await page.keyboard.press('Enter');
    await table.atRest();
    const state = async () => ({
      frames: await page.locator('.frame canvas').count(),
      name: await page.getByLabel('Name of the look').inputValue(),
      marks: await page.locator('.marks li').count(),
      split: await table.button('Split').getAttribute('aria-pressed'),
      undo: await page.locator('button[aria-label^="Undo"]').getAttribute('aria-label'),
    });
    const before = await state();
    expect(before).toEqual({ frames: 2, name: 'Boathouse', marks: 1, split: 'true', undo: 'Undo: name' });
    await page.reload();
    await table.atRest();
    await expect.poll(state).toEqual(before);
    await page.locator('button[aria-label^="Undo"]').click();
    await expect.poll(async () => (await state()).name).toBe('Candle-warm old lamp');
    expectNoFaults(table);
  });

  it('is not mixed up by a second tab: each keeps a sheet of its own', async () => {
    const profile = await browser.profile();
    const first = await openTable(profile, browser.url());
    await first.addLook('Xenon in the town hall');
    const second = await openTable(profile, browser.url());
    await expect.poll(() => second.page.getByLabel('Name of the look').inputValue()).toBe('New look');
    await second.addLook('Pink reel, cyan given back');
    await first.station('Lamp');
    await Promise.all([first.atRest(), second.atRest()]);
    await first.page.waitForTimeout(400);
    for (const { page } of [first, second]) await page.reload();
    const nameOn = ({ page }: typeof first) => page.getByLabel('Name of the look').inputValue();
    await expect.poll(() => nameOn(first)).toBe('Xenon in the town hall');
    await expect.poll(() => nameOn(second)).toBe('Pink reel, cyan given back');
    expectNoFaults(first);
    expectNoFaults(second);
  });
});

describe('what nobody can ask for any more', () => {
  /** Names of the kept files, and how many sheets are kept. */
  const stored = (page: Page) =>
    page.evaluate(
      () =>
        new Promise<{ files: number; sheets: number }>((done) => {
          indexedDB.open('gatelight-stills').onsuccess = ({ target }) => {
            const database = (target as IDBOpenDBRequest).result;
            const asked = database.transaction('files').objectStore('files').getAllKeys();
            asked.onsuccess = () => {
              database.close();
              const sheets = Object.keys(localStorage).filter((key) => key.startsWith('gatelight-sheet-'));
              done({ files: asked.result.length, sheets: sheets.length });
            };
          };
        }),
    );
  const keptMs = 400;
  /** Done in the background, after the picture. */
  const givenUpMs = 60_000;

  async function takeOff({ page }: Table): Promise<void> {
    for (let left = await page.locator('.frame canvas').count(); left > 0; left--) {
      await page.getByLabel(/^Take frame 1,/).click({ force: true });
      await expect.poll(() => page.locator('.frame canvas').count()).toBe(left - 1);
    }
  }

  it('is given up: stills that no undo brings back, and more than six sheets', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(still, patches);
    await takeOff(table);
    await page.waitForTimeout(keptMs);
    await page.reload();
    await table.open(patches);
    await page.evaluate(() => {
      const [key] = Object.keys(localStorage).filter((name) => name.startsWith('gatelight-sheet-'));
      const text = localStorage.getItem(key)!;
      for (let i = 1; i < 9; i++)
        localStorage.setItem(`gatelight-sheet-old-${i}`, text.replace(/"at":\d+/, `"at":${i}`));
    });
    await page.reload();
    await expect.poll(async () => (await stored(page)).sheets, { timeout: givenUpMs }).toBe(6);
    expect((await stored(page)).files).toBe(3);
    await page.evaluate(() => {
      for (let i = 1; i < 9; i++) localStorage.removeItem(`gatelight-sheet-old-${i}`);
    });
    await table.button('Mirror left and right').click({ clickCount: 45 });
    await page.waitForTimeout(keptMs);
    expect((await stored(page)).files).toBe(3);
    await page.reload();
    await expect.poll(async () => (await stored(page)).files, { timeout: givenUpMs }).toBe(1);
    await table.atRest();
    expect(await page.locator('.frame canvas').count()).toBe(1);
    expectNoFaults(table);
  });

  it('is not what another tab has open, or undo brings back', async () => {
    const profile = await browser.profile();
    const first = await openTable(profile, browser.url());
    await first.open(patches);
    await takeOff(first);
    const second = await openTable(profile, browser.url());
    await second.open(still);
    // What is kept of the first tab is lost, as when its browser's storage is full: the tab itself still undoes.
    await second.page.evaluate(() => {
      for (const key of Object.keys(localStorage)) localStorage.removeItem(key);
    });
    await second.page.reload();
    await second.page.waitForTimeout(2 * keptMs);
    expect((await stored(second.page)).files).toBe(2);
    await first.page.keyboard.press('Control+z');
    await first.atRest();
    await first.page.reload();
    await first.atRest();
    expect(await first.page.locator('.frame canvas').count()).toBe(1);
    expectNoFaults(first);
    expectNoFaults(second);
  });
});

describe('without a network', () => {
  it('works on when the connection goes, and asks for nothing', async () => {
    const profile = await browser.profile();
    const table = await openTable(profile, browser.url());
    const asked: string[] = [];
    await table.page.waitForLoadState('networkidle');
    table.page.on('request', (request) => {
      if (/^https?:/.test(request.url())) asked.push(request.url());
    });
    await profile.setOffline(true);
    await table.open(patches);
    await table.addLook('Xenon in the town hall');
    await table.atRest();
    await table.button('Save …').click();
    expect((await table.saved('Save .cube')).toString()).toContain('LUT_3D_SIZE 33');
    await table.saved('Save preview picture');
    expect(asked).toEqual([]);
    expectNoFaults(table);
  });

  it('opens from the built folder on the disk', async () => {
    const built = join(projectRoot, 'dist/page');
    const table = await openTable(await browser.profile(), pathToFileURL(join(built, 'index.html')).href);
    await table.open(patches);
    await table.addLook('Xenon in the town hall');
    await table.atRest();
    expectNoFaults(table);
  });

  it('names no other address in what is built', () => {
    const built = join(projectRoot, 'dist/page');
    const texts = readdirSync(built, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.(html|css)$/.test(name),
    );
    for (const name of texts) expect(readFileSync(join(built, name), 'utf8')).not.toMatch(/https?:\/\//);
  });
});

it('says in plain words what it needs where scripts do not run', async () => {
  const profile = await browser.profile();
  const page = await (await profile.browser()!.newContext({ javaScriptEnabled: false })).newPage();
  await page.goto(browser.url());
  expect(await page.locator('body').innerText()).toContain('the browser is too old or scripts are off');
  await page.context().close();
});
