/** How many rows a table has room for before any row was read. */
const firstRows = 4096;
/** And when those have come: the rows of 65 nodes a side, 6.6 MB, of which a system hands out what is written to. */
const usualRows = 65 ** 3;

/**
 * Rows of three numbers that grow as rows are read, never as a size is claimed, so that a false claim costs
 * nothing. At most half as much again as the rows need is held while it grows.
 */
export class GrowingTable {
  rows = 0;
  private values: Float64Array;

  /** @param expected rows when complete */
  constructor(readonly expected: number) {
    this.values = new Float64Array(3 * Math.min(expected, firstRows));
  }

  get complete(): boolean {
    return this.rows === this.expected;
  }

  /** The array that the next row goes into, at `3 * rows`; then count it with `rows++`. */
  roomForRow(): Float64Array {
    if (3 * this.rows === this.values.length) {
      const larger = new Float64Array(3 * Math.min(this.expected, Math.max(usualRows, 2 * this.rows)));
      larger.set(this.values);
      this.values = larger;
    }
    return this.values;
  }

  /** All values of a complete table. */
  finish(): Float64Array {
    return this.values;
  }
}
