import { expect, it } from 'vitest';
import { loadLabelFonts } from '../../src/stills/label-fonts.js';

it('loads both weights, with the letters of European names', () => {
  const { regular, strong } = loadLabelFonts();
  for (const faces of [regular, strong])
    for (const character of 'Aé½%…ŁřΩЖế') expect(faces.some((face) => face.hasChar(character))).toBe(true);
  const widths = [regular, strong].map((faces) => faces[0].charToGlyph('m').advanceWidth);
  expect(widths[0]).not.toBe(widths[1]);
});
