/** One stroke of an outline, in pixels, y downwards: move, line, quadratic or cubic curve, close. */
export type PathCommand =
  | { readonly type: 'M' | 'L'; readonly x: number; readonly y: number }
  | { readonly type: 'Q'; readonly x1: number; readonly y1: number; readonly x: number; readonly y: number }
  | {
      readonly type: 'C';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly x: number;
      readonly y: number;
    }
  | { readonly type: 'Z' };

export interface Glyph {
  /** Width to the next glyph in font units. */
  readonly advanceWidth?: number;
  /** The outline at a size in pixels per em, its origin at x, y. */
  getPath(x: number, y: number, size: number): { readonly commands: readonly PathCommand[] };
}

/**
 * What the text needs of a font: the shape that opentype.js gives to a font it has parsed. The parsing stays with the
 * caller, who has the bytes; and the types of opentype.js would let the whole core use a browser's document.
 */
export interface Typeface {
  readonly unitsPerEm: number;
  hasChar(character: string): boolean;
  /** The glyph of a character; of an unknown one the font's empty box. */
  charToGlyph(character: string): Glyph;
}

/** A weight of a font, in parts that each hold some alphabets: the first part that has a character draws it. */
export type Typefaces = readonly [Typeface, ...Typeface[]];

/** The two weights a picture is labelled with. */
export interface LabelFonts {
  readonly regular: Typefaces;
  readonly strong: Typefaces;
}
