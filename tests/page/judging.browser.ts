import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { gatelight, projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { largeStill, patchStill } from './stills.js';
import { expectNoFaults, tables } from './table.js';

const folder = temporaryFolder();
const browser = tables();
const look = join(projectRoot, 'looks/pink-reel.json');
/** Far longer than checks take; waited for only where they fail. */
const checkedMs = 60_000;
let patches: string;

beforeAll(async () => {
  patches = await patchStill(folder);
});

/** What the command finds wrong with the look's table of so many points. */
function faultsOf(points: number): string[] {
  const cube = join(folder, `${points}.cube`);
  gatelight(['build', look, '--size', String(points), '-o', cube]);
  const { stdout } = gatelight(['check', cube, '--against', look, '--json']);
  const { findings } = JSON.parse(stdout) as {
    findings: { sentence: string; pass: boolean; severity: string }[];
  };
  return findings
    .filter(({ pass, severity }) => !pass && severity !== 'note')
    .map(({ sentence }) => sentence);
}

describe('checks', () => {
  it('are those of the table that would be saved, whatever its size', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(look);
    await table.button('Save …').click();
    const said = page.locator('dialog .inside [role="status"]');
    const saysSoon = (words: string) =>
      expect.poll(() => said.innerText(), { timeout: checkedMs }).toContain(words);
    await saysSoon('nothing speaks against loading it');
    await page.getByLabel('Points a side').fill('5');
    await page.getByLabel('Points a side').press('Enter');
    await saysSoon('Do not burn this in');
    const faults = faultsOf(5);
    expect(faults.length).toBeGreaterThan(0);
    for (const fault of faults) expect(await said.innerText()).toContain(fault);
    await table.button('33').click();
    await saysSoon('nothing speaks against loading it');
    expect(faultsOf(33)).toEqual([]);
    expectNoFaults(table);
  });

  it('tell in the box itself that a file is on its way', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(look);
    await table.button('Save …').click();
    await table.button('65').click();
    const doing = page.locator('dialog .doing');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      expect.poll(() => doing.innerText(), { interval: 10 }).toBe('Building the .cube file'),
      table.button('Save .cube').click(),
    ]);
    expect(download.suggestedFilename()).toBe('pink-reel-cyan-given-back.cube');
    await expect.poll(() => doing.innerText()).toBe('');
    expectNoFaults(table);
  });

  it('leave scopes where they are while a control moves', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(patches, look);
    await table.atRest();
    const headline = () => page.locator('.judgement h2').innerText();
    const place = async () => (await page.locator('.scopes').boundingBox())!.y;
    expect(await headline()).toContain('Good');
    const before = await place();
    await page.getByRole('slider', { name: 'Cyan dye lost, slider' }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(headline).toBe('Checking …');
    expect(await place()).toBe(before);
    expectNoFaults(table);
  });

  it('name the directions of the vectorscope', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(patches);
    await table.button('Vectorscope').click();
    await expect.poll(() => page.locator('.scale li').allInnerTexts()).toEqual(['redder', 'bluer', '50 %']);
    const plot = (await page.locator('.scope').boundingBox())!;
    const middle = async (name: string) => {
      const { x, y, width, height } = (await page.locator(`.scale .${name}`).boundingBox())!;
      return { right: (x + width / 2 - plot.x) / plot.width, down: (y + height / 2 - plot.y) / plot.height };
    };
    expect((await middle('redder')).down).toBeLessThan(0.25);
    expect((await middle('bluer')).right).toBeGreaterThan(0.75);
    expectNoFaults(table);
  });
});

describe('what is in sight', () => {
  it('is never told the losses of another still', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(patches, await largeStill(folder));
    await table.station('Print');
    await page.getByRole('spinbutton', { name: 'Exposure' }).fill('2');
    await page.keyboard.press('Enter');
    await table.atRest();
    const losses = () => page.locator('.losses').innerText();
    await expect.poll(losses).toContain('% newly burnt out');
    await page.locator('.frame').nth(1).click();
    await page.evaluate(
      () => new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next))),
    );
    expect(await losses()).toBe('Counting losses …');
    await table.atRest();
    expect(await losses()).toContain('On this still');
    expectNoFaults(table);
  });

  it('is chosen among several looks by a click, not by moving the picture', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.open(patches, look);
    await table.addLook('Xenon in the town hall');
    await table.button('All looks').click();
    const name = () => page.getByLabel('Name of the look').inputValue();
    const bed = (await page.locator('.bed').boundingBox())!;
    const [left, right] = [0.25, 0.75].map((share) => bed.x + share * bed.width);
    const middle = bed.y + bed.height / 2;
    expect(await name()).toBe('Xenon in the town hall');
    await page.mouse.move(left, middle);
    await page.mouse.down();
    await page.mouse.move(left + 40, middle, { steps: 4 });
    await page.mouse.up();
    expect(await name()).toBe('Xenon in the town hall');
    await page.mouse.click(left, middle);
    await expect.poll(name).toBe('Pink reel, cyan given back');
    await page.mouse.click(right, middle);
    await expect.poll(name).toBe('Xenon in the town hall');
    expectNoFaults(table);
  });

  it('can be seen pixel by pixel where it is smaller than its place', async () => {
    const table = await browser.fresh();
    await table.open(patches);
    await table.button('Pixels').click();
    await expect.poll(() => table.page.locator('.zoom').innerText()).toBe('100 %');
    expect(await table.button('Pixels').getAttribute('aria-pressed')).toBe('true');
    await table.button('Whole').click();
    await expect.poll(() => table.button('Whole').getAttribute('aria-pressed')).toBe('true');
    expectNoFaults(table);
  });
});
