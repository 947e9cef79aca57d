import { describe, expect, it } from 'vitest';
import { makeCanvas } from '../../src/picture/canvas.js';
import { drawText, fitText, plainLine, textWidth } from '../../src/preview/text.js';
import { fonts } from './fonts.js';

const style = { faces: fonts.regular, sizePx: 18 };

/** Everything drawn in white on black, as one number. */
function inkOf(text: string): number {
  const canvas = makeCanvas(400, 40, [0, 0, 0]);
  drawText(canvas, style, text, { x: 5, baseline: 25, ink: [255, 255, 255] });
  return Array.from(canvas.data).reduce((a, b) => a + b, 0);
}

describe('plainLine', () => {
  it('makes one line of any text', () => {
    expect(plainLine('  reel\t7\r\nside\u0000 B\u2028end ')).toBe('reel 7 side B end');
  });

  it('drops marks of direction and composes accents', () => {
    expect(plainLine('\u202Eabc')).toBe('abc');
    expect(plainLine('cafe\u0301')).toBe('caf\u00e9');
  });
});

describe('fitText', () => {
  it('leaves a text that fits alone', () => {
    expect(fitText(style, 'harbour', textWidth(style, 'harbour'))).toBe('harbour');
  });

  it.each([
    'a name that is much too long for its strip',
    'w'.repeat(9000),
    '😀'.repeat(3000),
    'i '.repeat(50),
  ])('cuts %.12s... in its middle, and no more than it must', (name) => {
    const cut = fitText(style, name, 120);
    const plain = [...plainLine(name)];
    const [head, tail] = cut.split('…').map((part) => [...part]);
    expect(cut).toMatch(/\S…\S/u);
    expect(plain.slice(0, head.length)).toEqual(head);
    expect(plain.slice(plain.length - tail.length)).toEqual(tail);
    expect(textWidth(style, cut)).toBeLessThanOrEqual(120);
    // A blank at either side of the cut is left out, too.
    const longer = `${plain.slice(0, head.length + 3).join('')}…${tail.join('')}`;
    expect(textWidth(style, longer)).toBeGreaterThan(120);
  });

  it('keeps names apart that differ at their ends', () => {
    const [low, high] = ['30', '70'].map((level) =>
      fitText(style, `reel of the summer regatta, lamp at ${level}.png`, 120),
    );
    expect(low).not.toBe(high);
  });

  it('gives nothing where not even the ellipsis fits', () => {
    expect(fitText(style, 'harbour', 3)).toBe('');
    expect(fitText(style, 'harbour', 0)).toBe('');
    expect(fitText(style, 'harbour', -5)).toBe('');
  });

  it('takes empty names', () => {
    expect(fitText(style, '', 100)).toBe('');
    expect(textWidth(style, '')).toBe(0);
  });
});

describe('drawText', () => {
  it('ends where its width says', () => {
    const canvas = makeCanvas(300, 40, [0, 0, 0]);
    const end = drawText(canvas, style, 'Quay 1968', { x: 5, baseline: 25, ink: [255, 255, 255] });
    expect(end).toBeCloseTo(5 + textWidth(style, 'Quay 1968'), 9);
  });

  it.each(['é', 'ř', 'Ω', 'Ж', 'ế', '½', '%', '…', '–'])('has a glyph of its own for %s', (character) => {
    expect(inkOf(character)).toBeGreaterThan(0);
    expect(inkOf(character)).not.toBe(inkOf('漢')); // the box of unknown characters
  });

  it('draws a box for a character that the font lacks', () => {
    expect(inkOf('漢')).toBeGreaterThan(0);
    expect(inkOf('漢')).toBe(inkOf('字'));
  });

  it('draws nothing for spaces and nothing outside of the picture', () => {
    expect(inkOf('   ')).toBe(0);
    const canvas = makeCanvas(4, 4, [0, 0, 0]);
    drawText(canvas, style, 'far', { x: -500, baseline: 900, ink: [255, 255, 255] });
    expect(Math.max(...canvas.data)).toBe(0);
  });
});
