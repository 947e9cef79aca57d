import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot, temporaryFolder } from '../cli/gatelight.js';
import { roundingOfTheScreen } from '../tolerances.js';
import { appliedPatches, greatestDifference, recordedPatches, seenPatches } from './seen-colours.js';
import { patchCodes, patchStill } from './stills.js';
import { expectNoFaults, tables } from './table.js';

const folder = temporaryFolder();
const browser = tables({ graphics: false });

describe('a browser without WebGL2', () => {
  it('shows the same colours, and follows a slider', async () => {
    const table = await browser.fresh();
    const { page } = table;
    expect(await page.evaluate(() => document.createElement('canvas').getContext('webgl2'))).toBeNull();
    const [still, look] = [await patchStill(folder), join(projectRoot, 'looks/warm-stock-and-lamp.json')];
    await table.open(still, look);
    await table.atRest();
    const expected = await appliedPatches(look, still, folder);
    await expect
      .poll(async () => greatestDifference(await seenPatches(table), expected))
      .toBeLessThanOrEqual(roundingOfTheScreen);
    await table.button('Before').click();
    await expect.poll(async () => greatestDifference(await seenPatches(table), patchCodes)).toBe(0);

    await table.addLook('Lamp light for an HLG recording');
    const asHlg = recordedPatches(join(projectRoot, 'looks/warm-lamp-for-hlg.json'));
    await expect
      .poll(async () => greatestDifference(await seenPatches(table), asHlg))
      .toBeLessThanOrEqual(roundingOfTheScreen);
    await table.button('Warm stock, lamp light').click();

    await table.button('After').click();
    await table.station('Print');
    await page.getByRole('slider', { name: 'Exposure, slider' }).focus();
    for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
    await table.atRest();
    const lighter = await seenPatches(table);
    expect(lighter[2].every((code, c) => code > expected[2][c])).toBe(true);
    await table.button('Split').click();
    await table.screenshot('no-graphics');
    expectNoFaults(table);
  });
});
