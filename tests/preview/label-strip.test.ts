import { describe, expect, it } from 'vitest';
import { labelStrip, stripHeight } from '../../src/preview/label-strip.js';
import { palette } from '../../src/preview/palette.js';
import { fonts } from './fonts.js';

/** Columns of the strip that hold ink. */
function inkedColumns(name: string, width = 400): number[] {
  const { data } = labelStrip(width, 'after', name, fonts);
  const columns = new Set<number>();
  for (let i = 0; i < data.length; i += 3) if (data[i] !== palette.surround[0]) columns.add((i / 3) % width);
  return [...columns].sort((a, b) => a - b);
}

describe('labelStrip', () => {
  it('has the width asked for and writes part and name from the left', () => {
    const strip = labelStrip(400, 'after', 'Regatta, 1968', fonts);
    expect(strip).toMatchObject({ width: 400, height: stripHeight, channels: 3, bits: 8 });
    expect(inkedColumns('Regatta, 1968')[0]).toBeLessThan(4);
    expect(inkedColumns('Regatta, 1968').length).toBeGreaterThan(inkedColumns('').length);
  });

  it('ends long names inside of its width', () => {
    expect(inkedColumns('Regatta of the harbour club, '.repeat(40)).at(-1)).toBeLessThan(400);
  });

  it('takes any width', () => {
    for (const width of [1, 10, 60])
      expect(labelStrip(width, 'before', 'x'.repeat(99), fonts).width).toBe(width);
  });
});
