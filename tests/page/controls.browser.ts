import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/gatelight.js';
import { patchStill } from './stills.js';
import { expectNoFaults, tables } from './table.js';

const browser = tables();
let patches: string;

beforeAll(async () => {
  patches = await patchStill(temporaryFolder());
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
    expect((await said()).join()).toContain('set at the station Eye');
    await table.station('Eye');
    await table.page.getByLabel('from luminance and surround').check();
    await table.station('Screen');
    expect(await said()).toEqual([]);
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
    expect(await black.getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Escape');
    await expect.poll(() => black.getAttribute('aria-pressed')).toBe('false');
    expectNoFaults(table);
  });
});
