import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/gatelight.js';
import { drawnStill } from './stills.js';
import { expectNoFaults, type Table, tables } from './table.js';

const folder = temporaryFolder();
const browser = tables();
let stills: string[];

beforeAll(async () => {
  stills = [await drawnStill(folder, 'regatta', 'blue-shifted'), await drawnStill(folder, 'tram', 'pink')];
});

/** A look that the checks find a fault with: burnt out from mid-grey on. */
function harshLook(): string {
  const file = join(folder, 'harsh.json');
  writeFileSync(file, JSON.stringify({ name: 'Harsh', print: { exposureStops: 3, contrast: 2.5 } }));
  return file;
}

const stations = ['Gate light', 'Stock', 'Print', 'Lamp', 'Screen', 'Eye', 'File'];

/** States of the page by name, each reached from the one before. */
const states: Readonly<Record<string, (table: Table) => Promise<unknown>>> = {
  empty: async () => {},
  'choosing a look': (table) => table.button('Add a look …').click(),
  'a reel, measured': async (table) => {
    await table.page.keyboard.press('Escape');
    await table.open(...stills);
    await table.addLook('Blue-shifted reel, lamp light');
  },
  ...Object.fromEntries(
    stations.map((title) => [`station ${title.toLowerCase()}`, (table: Table) => table.station(title)]),
  ),
  marked: async (table) => {
    await table.station('Stock');
    await table.button('Clear film').focus();
    await table.page.keyboard.press('Enter');
  },
  'about to mark': (table) => table.button('Black').click(),
  split: (table) => table.button('Split').click(),
  vectorscope: (table) => table.button('Vectorscope').click(),
  'not good': async (table) => {
    await table.open(harshLook());
    await table.station('Print');
  },
  'looks side by side': async (table) => {
    await table.addLook('Candle-warm old lamp');
    await table.addLook('Xenon in the town hall');
    await table.button('All looks').click();
    await table.button('Histogram').click();
  },
  saving: (table) => table.button('Save …').click(),
};

it.each([
  [640, 360],
  [960, 540],
])(
  'at %i x %i, a window zoomed to 200 %, the picture has room and all can be reached',
  async (width, height) => {
    const table = await browser.fresh(width, height);
    const { page } = table;
    await table.open(...stills);
    await table.atRest();
    const bed = page.locator('.bed');
    await bed.scrollIntoViewIfNeeded();
    const { y, height: room } = (await bed.boundingBox())!;
    expect(room).toBeGreaterThan(height / 2);
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y + room).toBeLessThanOrEqual(height);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    for (const whole of ['.path ol', '.reel ol']) {
      const { height: needed } = (await page.locator(whole).boundingBox())!;
      const { height: given } = (await page.locator(whole).locator('..').boundingBox())!;
      expect(given).toBeGreaterThanOrEqual(needed);
    }
    await table.screenshot(`${width}-zoomed`);
    expect(await table.complaints()).toEqual([]);
    expectNoFaults(table);
  },
);

describe.each([
  [1280, 720],
  [1920, 1080],
  [900, 700],
  [768, 1024],
])('at %i x %i', (width, height) => {
  it('nobody is kept out and no word is cut off, in any state', async () => {
    const table = await browser.fresh(width, height);
    const complaints: Record<string, string[]> = {};
    for (const [name, reach] of Object.entries(states)) {
      await reach(table);
      await table.atRest();
      await table.screenshot(`${width}-${name.replaceAll(/[ ,]+/g, '-')}`);
      const found = await table.complaints();
      if (found.length > 0) complaints[name] = found;
    }
    expect(complaints).toEqual({});
    expectNoFaults(table);
  });
});
