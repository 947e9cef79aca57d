import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { drawnStill, patchStill } from './stills.js';
import { expectNoFaults, openTable, tables } from './table.js';

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
