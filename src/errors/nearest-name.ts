/** Edits (insert, delete, replace, swap of neighbours) between two words: optimal string alignment. */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1;
      row[j] = Math.min(row[j - 1] + 1, last[j] + 1, last[j - 1] + cost);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) row[j] = Math.min(row[j], before[j - 2] + 1);
    }
    before = last;
    last = row;
  }
  return last[b.length];
}

/**
 * The name that was probably meant, or undefined when none is near (more than 40 % of the letters would change).
 * @example nearestName('tungsten-hallogen', ['xenon', 'tungsten-halogen']) // 'tungsten-halogen'
 */
export function nearestName(given: string, names: readonly string[]): string | undefined {
  if (given.length > 100) return undefined;
  let best: string | undefined;
  let fewest = Infinity;
  for (const name of names) {
    const edits = editDistance(given.toLowerCase(), name.toLowerCase());
    if (edits < fewest) [best, fewest] = [name, edits];
  }
  return best !== undefined && fewest <= 0.4 * Math.max(given.length, best.length) ? best : undefined;
}
