import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { gatelight, projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { patchStill } from './stills.js';
import { expectNoFaults, tables } from './table.js';

const browser = tables();
const folder = temporaryFolder();
let patches: string;

beforeAll(async () => {
  patches = await patchStill(folder);
});

describe('a station', () => {
  it('opens at its first control, however far the one before was scrolled', async () => {
    const table = await browser.fresh();
    const controls = table.page.locator('.controls');
    await table.station('File');
    await controls.evaluate((element) => (element.scrollTop = element.scrollHeight));
    await table.station('Print');
    await expect.poll(() => controls.evaluate((element) => element.scrollTop)).toBe(0);
    expectNoFaults(table);
  });

  it('is reset by its button, which rests where there is nothing to reset', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.addLook('Candle-warm old lamp');
    await table.station('Lamp');
    const lamp = () => page.getByRole('combobox', { name: 'Lamp' }).inputValue();
    await expect.poll(lamp).toBe('incandescent dim');
    await table.button('Reset Lamp').click();
    await expect.poll(lamp).toBe('as neutral as the gate light');
    expect(await table.button('Reset Lamp').isDisabled()).toBe(true);
    expectNoFaults(table);
  });

  it('says of a control that changes nothing why that is', async () => {
    const table = await browser.fresh();
    await table.addLook('Candle-warm old lamp');
    await table.station('Screen');
    const said = () => table.page.locator('.no-effect').allInnerTexts();
    await expect.poll(async () => (await said()).join()).toContain('set at the station Eye');
    await table.station('Eye');
    await table.page.getByLabel('from luminance and surround').check();
    await table.station('Screen');
    await expect.poll(said).toEqual([]);
    expectNoFaults(table);
  });
});

describe('the file of a lamp', () => {
  it('goes into the look that is shaped, and is refused in words where a table is looked at', async () => {
    const table = await browser.fresh();
    const { page } = table;
    const lamp = join(folder, 'attic.csv');
    const rows = Array.from({ length: 81 }, (_, i) => `${380 + 5 * i},${1 + i / 20}`);
    writeFileSync(lamp, ['wavelength,power', ...rows, ''].join('\n'));
    await table.open(lamp);
    const chosen = page.getByRole('combobox', { name: 'Lamp' });
    await expect.poll(() => chosen.inputValue()).toBe('measured lamp');
    const cube = join(folder, 'bare.cube');
    gatelight(['build', join(projectRoot, 'looks/xenon-hall.json'), '-o', cube]);
    await table.open(cube);
    await table.open(lamp);
    await expect
      .poll(() => page.locator('.messages').innerText())
      .toContain('Choose a look or add one, then open the lamp again.');
    expectNoFaults(table);
  });
});

describe('what was begun', () => {
  it('ends with the focus, or by Escape: holding the recording, drawing a mark', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(patches);
    await table.atRest();
    const caption = () => page.locator('.caption').innerText();
    await page.locator('.glass').focus();
    await page.keyboard.down('o');
    await expect.poll(caption).toBe('as recorded');
    await table.button('Split').focus();
    await page.keyboard.up('o');
    await expect.poll(caption).toBe('New look');
    const black = table.button('Black');
    await black.click();
    await expect.poll(() => black.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Escape');
    await expect.poll(() => black.getAttribute('aria-pressed')).toBe('false');
    expectNoFaults(table);
  });
});
