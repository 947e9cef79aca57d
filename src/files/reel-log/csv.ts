import type { ReelEntry } from './entry.js';

/** A column: its heading and its cell of a record. */
type Column = readonly [heading: string, cell: (entry: ReelEntry) => string | number | boolean | undefined];

const columns: readonly Column[] = [
  ['reel', (entry) => entry.reel],
  ['recorded at', (entry) => entry.recordedAt],
  ['gauge', (entry) => entry.gauge],
  ['stock notes', (entry) => entry.stockNotes],
  ['lamp', (entry) => entry.lamp],
  ['shutter', (entry) => entry.shutter],
  ['look', (entry) => entry.look?.name],
  ['look file', (entry) => entry.look?.file],
  ['look SHA-256', (entry) => entry.look?.sha256],
  ['cube file', (entry) => entry.cube?.file],
  ['cube SHA-256', (entry) => entry.cube?.sha256],
  ['stills', (entry) => entry.stills?.map(({ file }) => file).join('; ')],
  ['burn-in holds', (entry) => entry.verify?.holds],
  ['mean CIEDE2000', (entry) => entry.verify?.mean],
  ['95th percentile CIEDE2000', (entry) => entry.verify?.p95],
  ['cause', (entry) => entry.verify?.cause],
  ['notes', (entry) => entry.notes],
];

/**
 * One cell (RFC 4180, section 2): quoted when it holds a comma, a quote or a line end. Text that a spreadsheet would
 * run as a formula gets an apostrophe in front (common practice, no source).
 */
function cell(value: string | number | boolean | undefined): string {
  if (typeof value !== 'string') return value === undefined ? '' : String(value);
  const text = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The records as comma-separated values with a heading row, CR LF line ends (RFC 4180). */
export function reelLogCsv(entries: Iterable<ReelEntry>): string {
  const rows = [columns.map(([heading]) => cell(heading)).join(',')];
  for (const entry of entries) rows.push(columns.map(([, of]) => cell(of(entry))).join(','));
  return rows.map((row) => `${row}\r\n`).join('');
}
