import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { loadStills } from '../../src/cli/camera-options.js';
import { terminal } from '../../src/cli/report.js';
import { drawBars } from '../clips/bars.js';
import { encodeClip, packagedEnvironment, packagedTools, temporaryFolder } from '../clips/tools.js';

const folder = temporaryFolder();
Object.assign(process.env, packagedEnvironment);
const kind = { pattern: '444', bits: 10, range: 'legal', matrix: 'bt709' } as const;
const clip = encodeClip(packagedTools, join(folder, 'untagged.mkv'), drawBars(kind), []);

it('what was assumed of a movie is told once, however many of its frames are read', async () => {
  const note = vi.spyOn(terminal, 'note').mockImplementation(() => undefined);
  const stills = await loadStills([`${clip}@f0`, `${clip}@0`]);
  expect(stills).toHaveLength(2);
  const told = note.mock.calls.map(([text]) => text);
  expect(told.length).toBeGreaterThan(0);
  expect(new Set(told).size).toBe(told.length);
  for (const text of told) expect(text).toContain(`${clip}:`);
});
