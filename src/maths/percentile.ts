/**
 * The value below which the share `p` (0..1) of the values lies, linear between ranks. NaN for no values.
 * The array is sorted in place.
 */
export function percentile(values: Float64Array, p: number): number {
  values.sort();
  const rank = p * (values.length - 1);
  const low = Math.floor(rank);
  const high = Math.ceil(rank);
  return values.length === 0 ? NaN : values[low] + (rank - low) * (values[high] - values[low]);
}
