import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { gatelight, projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { drawnStill } from './stills.js';
import { expectNoFaults, type Table, tables } from './table.js';

const folder = temporaryFolder();
const browser = tables();
let stills: string[];

beforeAll(async () => {
  stills = [
    await drawnStill(folder, 'regatta', 'blue-shifted'),
    await drawnStill(folder, 'tram', 'blue-shifted'),
  ];
});

/** What the command line builds of a look file that the page saved. */
function built(look: Buffer, ...options: string[]): Buffer {
  const [json, cube] = [join(folder, 'saved.json'), join(folder, 'built.cube')];
  writeFileSync(json, look);
  const { status, stderr } = gatelight(['build', json, '-o', cube, '--force', ...options]);
  expect(stderr).not.toContain('gatelight:');
  expect(status).toBeLessThan(2);
  return readFileSync(cube);
}

/** What `gatelight check` answers to a file, and what the page says above its findings. */
async function expectSameVerdict({ page }: Table, cube: Buffer): Promise<void> {
  const file = join(folder, 'checked.cube');
  writeFileSync(file, cube);
  const { status } = gatelight(['check', file]);
  const headline = await page.locator('.judgement h2').innerText();
  expect(headline.startsWith(status === 0 ? 'Good' : 'Not good')).toBe(true);
}

async function savesWhatIsBuilt(table: Table, cube: Buffer, look: Buffer): Promise<void> {
  expect(cube.equals(built(look)), 'the .cube is byte for byte what the command line writes').toBe(true);
  await expectSameVerdict(table, cube);
  expectNoFaults(table);
}

describe('the whole job', () => {
  it('by mouse: open, mark, measure, shape, compare, undo, check, save', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.screenshot('job-1-empty');
    await table.open(...stills);
    await table.atRest();
    expect(await page.locator('.frame canvas').count()).toBe(2);

    await page.locator('.frame').first().click();
    await table.atRest();
    const losses = () => page.locator('.measured dd').allInnerTexts();
    const unmarked = await losses();
    await table.button('Neutral').click();
    const picture = (await page.locator('.glass').boundingBox())!;
    const width = (picture.height * 4) / 3;
    const left = picture.x + (picture.width - width) / 2;
    // A grey step of the wedge at the frame's right edge.
    await page.mouse.move(left + 0.97 * width, picture.y + 0.42 * picture.height);
    await page.mouse.down();
    await page.mouse.move(left + 0.985 * width, picture.y + 0.46 * picture.height, { steps: 3 });
    await page.mouse.up();
    await page.locator('.marks li').waitFor();
    await table.atRest();
    expect(await losses()).not.toEqual(unmarked);
    await table.screenshot('job-2-measured');

    await table.button('Take these into the look').click();
    await table.atRest();
    const yellow = page.getByRole('spinbutton', { name: 'Yellow dye lost' });
    const taken = Math.round(Number(await yellow.inputValue()));
    expect(taken).toBe(Number.parseInt((await losses())[2]));

    await table.station('Lamp');
    await page.getByRole('combobox', { name: 'Lamp' }).selectOption('glowing body (kelvin)');
    const slider = page.getByRole('slider', { name: 'Temperature, slider' });
    const track = (await slider.boundingBox())!;
    await page.mouse.move(track.x + 0.5 * track.width, track.y + track.height / 2);
    await page.mouse.down();
    await page.mouse.move(track.x + 0.3 * track.width, track.y + track.height / 2, { steps: 8 });
    await page.mouse.up();
    const kelvin = page.getByRole('spinbutton', { name: 'Temperature' });
    const chosen = Number(await kelvin.inputValue());
    expect(chosen).toBeGreaterThan(1800);
    expect(chosen).toBeLessThan(3200);
    await table.station('Eye');
    await table.station('File');
    const softness = page.getByRole('spinbutton', { name: 'Softness of the shoulder' });
    await softness.fill('40');
    await softness.press('Enter');
    await table.atRest();

    for (const comparison of ['Before', 'Split', 'Side by side', 'After']) {
      await table.button(comparison).click();
      await table.screenshot(`job-3-${comparison.toLowerCase().replaceAll(' ', '-')}`);
    }
    await page.locator('button[aria-label^="Undo:"]').click();
    await expect.poll(() => softness.inputValue()).toBe('0');
    await page.locator('button[aria-label^="Redo:"]').click();
    await expect.poll(() => softness.inputValue()).toBe('40');

    await table.atRest();
    await table.button('Save …').click();
    await table.screenshot('job-4-save');
    await savesWhatIsBuilt(table, await table.saved('Save .cube'), await table.saved('Save look file'));
  });

  it('by keyboard alone', async () => {
    const table = await browser.fresh();
    const { page } = table;
    const press = (...keys: string[]) =>
      keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());

    /** Goes on with Tab until something has the focus. */
    async function tabTo(goal: Locator): Promise<void> {
      for (let step = 0; step < 120; step++) {
        if (await goal.evaluate((element) => element === document.activeElement)) return;
        await press('Tab');
      }
      throw new Error(`Tab does not reach ${String(goal)}`);
    }

    await tabTo(table.button('Choose files'));
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press('Enter')]);
    await chooser.setFiles(stills);
    await table.atRest();

    await tabTo(table.button('Add a look …'));
    await press('Enter');
    await tabTo(page.getByRole('button', { name: /^Soft projection, neutral/ }));
    await press('Enter');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    expect(await table.button('Add a look …').evaluate((element) => element === document.activeElement)).toBe(
      true,
    );

    await tabTo(page.getByRole('navigation').getByRole('button', { name: 'Stock' }));
    await press('Enter');
    await tabTo(table.button('Neutral'));
    await press('Enter');
    const fromLeft = page.getByRole('spinbutton', { name: 'Neutral 1, pixels from left' });
    await tabTo(fromLeft);
    await fromLeft.press('Control+a');
    await page.keyboard.type('500');
    await press('Tab');
    await table.atRest();
    expect(await fromLeft.inputValue()).toBe('500');

    const cyan = page.getByRole('slider', { name: 'Cyan dye lost, slider' });
    await tabTo(cyan);
    await press('ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight');
    const figure = page.getByRole('spinbutton', { name: 'Cyan dye lost' });
    await expect.poll(() => figure.inputValue()).toBe('2.0');
    await press('Control+z');
    await expect.poll(() => figure.inputValue()).toBe('0.0');
    await press('Control+Shift+z');
    await expect.poll(() => figure.inputValue()).toBe('2.0');

    await tabTo(page.locator('.glass'));
    const drawnAs = () => page.locator('.caption').innerText();
    await page.keyboard.down('o');
    await expect.poll(drawnAs).toBe('as recorded');
    await page.keyboard.up('o');
    await expect.poll(drawnAs).toBe('Soft projection, neutral');
    await press('1');
    await expect.poll(() => page.locator('.zoom').innerText()).toBe('100 %');
    await press('ArrowRight', '0');
    await tabTo(table.button('Split'));
    await press(' ');
    const split = page.getByRole('slider', { name: 'Split between before and after' });
    await tabTo(split);
    await press('ArrowLeft', 'ArrowLeft');
    await expect.poll(() => split.getAttribute('aria-valuenow')).toBe('46');
    await table.screenshot('keyboard-split');

    await table.atRest();
    await tabTo(table.button('Save …'));
    await press('Enter');
    const fetched = async (name: string) => {
      await tabTo(table.button(name));
      const [download] = await Promise.all([page.waitForEvent('download'), press('Enter')]);
      return readFileSync(await download.path());
    };
    const [cube, look] = [await fetched('Save .cube'), await fetched('Save look file')];
    await press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    await savesWhatIsBuilt(table, cube, look);
  });

  it('saves by size, title and plainness what the command line writes with the same options', async () => {
    const table = await browser.fresh();
    const { page } = table;
    await table.addLook('Xenon in the town hall');
    await table.atRest();
    await table.button('Save …').click();
    const look = await table.saved('Save look file');
    expect(built(look).equals(built(readFileSync(join(projectRoot, 'looks/xenon-hall.json'))))).toBe(true);
    await table.button('17').click();
    expect((await table.saved('Save .cube')).equals(built(look, '--size', '17'))).toBe(true);
    await page.getByLabel('Title').fill('Town hall, winter');
    await page.getByLabel('Points a side').fill('21');
    await page.getByLabel('Points a side').press('Enter');
    const titled = built(look, '--size', '21', '--title', 'Town hall, winter');
    expect((await table.saved('Save .cube')).equals(titled)).toBe(true);
    await page.getByText('Plain: nothing but').click();
    const plain = built(look, '--size', '21', '--title', 'Town hall, winter', '--plain');
    expect((await table.saved('Save .cube')).equals(plain)).toBe(true);
    expectNoFaults(table);
  });
});
