/**
 * What the .cube format allows, and what files of the usual sizes come to.
 * Source: Cube LUT Specification 1.0 (2013); 250 bytes a line is its section 5.3.
 */
export const cubeFormat = {
  size1D: { least: 2, most: 65536 },
  size3D: { least: 2, most: 256 },
  lineBytes: 250,
  defaultDomain: { min: [0, 0, 0], max: [1, 1, 1] },
  /** Row of a node, counted from 0: red fastest, blue slowest. */
  row: (r: number, g: number, b: number, size: number): number => r + size * g + size * size * b,
  /**
   * Nodes a side, rows, and bytes of all rows with six decimals and values in 0..1: three numbers of 8 characters,
   * two blanks and a line feed make 27 bytes a row. Derived from the format.
   */
  files: [
    { size: 17, rows: 4913, bytes: 132651 },
    { size: 33, rows: 35937, bytes: 970299 },
    { size: 65, rows: 274625, bytes: 7414875 },
  ],
} as const;
