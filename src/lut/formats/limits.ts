/** What a LUT, and a file that carries one, may claim: every limit in one place. */
export const limits = {
  /** Nodes a side of a 3D LUT. Cube LUT Specification 1.0 (2013). */
  latticeSize: { least: 2, most: 256 },
  /** Entries of a 1D LUT. Cube LUT Specification 1.0 (2013). */
  curveSize: { least: 2, most: 65536 },
  /** Beyond this size common open readers refuse a 3D LUT (measured: one stops at 129). */
  commonLatticeSize: 129,
  /** Bytes in a line without its end. Cube LUT Specification 1.0 (2013), section 5.3. */
  lineBytes: 250,
  /** Bytes in a comment or title that we still read, with a note: common readers take 300 and more. Ours. */
  textLineBytes: 4096,
  /** Comments kept of a file; further ones are read over. Ours. */
  keptComments: 1000,
  /** Bytes of comments and blank lines in a file, so that an endless one ends. Ours. */
  idleBytes: 16 * 1024 * 1024,
  /** Decimals of a written number: six keep a lattice within half a millionth, fifteen are all a double has. */
  decimals: { least: 6, most: 15 },
} as const;
