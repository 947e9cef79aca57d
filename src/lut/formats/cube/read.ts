import { InputError } from '../../../errors/input-error.js';
import { isUnitDomain, ones, rowCount, zeros, type Lut } from '../../lattice.js';
import type { LutFile, LutReader } from '../lut-format.js';
import { limits } from '../limits.js';
import type { Fault } from './explain-row.js';
import { isNotFinite, tripleFault, trimBlanks, words } from './explain-row.js';
import type { CubeHeader, KeywordName } from './header.js';
import { keywordOf, requireRisingDomain, takeKeyword } from './header.js';
import type { LineReceiver } from './lines.js';
import { LineSplitter } from './lines.js';
import { scanRow } from './number.js';
import { readPlainRows } from './plain-rows.js';
import { GrowingTable } from './table.js';
import { isBlank, isControl, latinText, printable, utf8Text } from './text.js';

export type CubeFile = LutFile;

/**
 * A reader of .cube files, 1D and 3D, strict to the Cube LUT Specification 1.0 (2013). It takes bytes as they
 * come, believes no size before the rows are there, and ends at the first fault that is certain.
 * Beyond the specification it takes comments and titles up to 4096 bytes, blanks before a line, a byte-order
 * mark, keywords in small letters and lines that end in CR alone, each with a note.
 * @param file the name that problems are reported under
 * @throws InputError (from `write` and `end`) with the line, for whatever is wrong
 */
export function createCubeReader(file: string): LutReader {
  return new CubeReader(file);
}

/** Reads a whole .cube file. @throws InputError with the line */
export function readCube(bytes: Uint8Array, file: string): CubeFile {
  const reader = createCubeReader(file);
  reader.write(bytes);
  return reader.end();
}

class CubeReader implements LutReader, LineReceiver {
  private readonly lines = new LineSplitter(this);
  private readonly header: CubeHeader = { size: 0 };
  private readonly seen = new Set<KeywordName>();
  private readonly comments: [string, string][] = [];
  /** One note a kind of oddity, where it was met first. */
  private readonly notes = new Map<string, string>();
  private table: GrowingTable | undefined;
  private idleBytes = 0;
  private empty = true;
  /** All lines are read: what is still missing is missed at the last one. */
  private ended = false;
  /** Comments or blank lines came after the last row. */
  private paused = false;

  constructor(private readonly file: string) {}

  write(chunk: Uint8Array): void {
    if (chunk.length > 0) this.empty = false;
    this.lines.write(chunk);
  }

  end(): CubeFile {
    this.lines.end();
    this.ended = true;
    if (this.empty) this.refuse({ what: 'the file is empty' });
    const { rows, expected } = this.table ?? this.openTable();
    if (rows < expected)
      this.refuse({ what: `the file ends after ${rows} of ${expected} rows (${this.sizeInWords()})` });
    const lut = this.lut();
    this.noteWhatReadersSay(lut);
    const { title } = this.header;
    return {
      lut,
      ...(title !== undefined && { title }),
      comments: this.comments,
      notes: [...this.notes.values()],
    };
  }

  line(bytes: Uint8Array, start: number, end: number): void {
    let first = this.lines.number === 1 ? this.afterMark(bytes, start, end) : start;
    const edge = first;
    while (first < end && isBlank(bytes[first])) first++;
    if (first > edge && first < end) this.note('blanks', 'begins with blanks, which some readers refuse');
    if (first === end || bytes[first] === hash) return this.idleLine(bytes, first, end, end - start);
    if (end - start > limits.lineBytes) this.noteLongLine();
    const keyword = this.table ? isLetter(bytes[first]) : !beginsNumber(bytes[first]);
    if (keyword) this.keywordLine(bytes, first, end);
    else this.row(bytes, first, end);
  }

  /** Rows of a table that has begun, where nothing is to be noted of them. */
  takeLines(bytes: Uint8Array, start: number, limit: number): { end: number; lines: number } {
    const { table } = this;
    if (!table || table.rows === 0 || this.paused) return { end: start, lines: 0 };
    const before = table.rows;
    const end = readPlainRows(bytes, start, limit, table);
    return { end, lines: table.rows - before };
  }

  loneReturn(): void {
    this.note('return', 'ends in CR alone, which common readers refuse', this.lines.number - 1);
  }

  tooLong(bytes: Uint8Array, start: number, end: number, most: number): never {
    this.requireText(bytes, start, end);
    return this.refuse({ what: `the line is longer than ${most} bytes` });
  }

  private row(bytes: Uint8Array, start: number, end: number): void {
    const table = this.table ?? this.openTable();
    if (table.complete) {
      this.requireText(bytes, start, end);
      this.refuse({
        what: 'there are too many rows',
        allowed: `${table.expected} rows (${this.sizeInWords()})`,
      });
    }
    const at = 3 * table.rows;
    if (!scanRow(bytes, start, end, table.roomForRow(), at)) this.explainRow(bytes, start, end);
    if (this.paused && table.rows > 0)
      this.note('pause', 'goes on with the table after a comment or blank line, which some readers refuse');
    this.paused = false;
    table.rows++;
  }

  private explainRow(bytes: Uint8Array, start: number, end: number): never {
    this.requireText(bytes, start, end);
    const fault = tripleFault(words(latinText(bytes, start, end)), 'the row');
    return this.refuse(fault ?? { what: 'the row cannot be read' });
  }

  /** The first row ends the keywords. */
  private openTable(): GrowingTable {
    const { kind, size } = this.header;
    if (!kind)
      return this.refuse({ what: 'no size stands before the table', allowed: 'LUT_3D_SIZE or LUT_1D_SIZE' });
    requireRisingDomain(this.header, this.refuse);
    this.table = new GrowingTable(rowCount(kind, size));
    return this.table;
  }

  private keywordLine(bytes: Uint8Array, start: number, end: number): void {
    const line = this.textOf(bytes, start, end);
    const [word] = words(line);
    if (isNotFinite(word)) this.explainRow(bytes, start, end);
    const name = keywordOf(word, this.refuse);
    if (this.table) this.refuse({ what: `${name} stands after the table has begun` });
    if (this.seen.has(name)) this.refuse({ what: `${name} stands here a second time` });
    if (word !== name)
      this.note('case', `has the keyword ${name} in small letters, which some readers refuse`);
    this.seen.add(name);
    takeKeyword(this.header, name, trimBlanks(line.slice(word.length)), this.refuse);
  }

  private idleLine(bytes: Uint8Array, start: number, end: number, length: number): void {
    this.paused = true;
    this.idleBytes += length + 1;
    if (this.idleBytes > limits.idleBytes)
      this.refuse({ what: `more than ${limits.idleBytes} bytes of comments and blank lines` });
    if (start === end) return;
    if (length > limits.lineBytes) this.noteLongLine();
    const comment = printable(this.textOf(bytes, start + 1, end)).trim();
    const colon = comment.search(/:(\s|$)/);
    if (colon <= 0) return;
    if (this.comments.length < limits.keptComments)
      this.comments.push([comment.slice(0, colon).trim(), comment.slice(colon + 1).trim()]);
    else this.note('comments', `begins the comments beyond ${limits.keptComments}, which are left out`);
  }

  /** Where the first line begins: after a byte-order mark, if there is one. */
  private afterMark(bytes: Uint8Array, start: number, end: number): number {
    const [a, b, c] = bytes.subarray(start, end);
    if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff))
      this.refuse({ what: 'the file is written in UTF-16', hint: 'Save it as plain text (ASCII or UTF-8).' });
    if (a !== 0xef || b !== 0xbb || c !== 0xbf) return start;
    this.note('mark', 'begins with a byte-order mark, which common readers refuse');
    return start + 3;
  }

  /** A comment or keyword line in words. Old programs wrote Latin-1; that is told by its not being UTF-8. */
  private textOf(bytes: Uint8Array, start: number, end: number): string {
    this.requireText(bytes, start, end);
    return utf8Text(bytes, start, end) ?? latinText(bytes, start, end);
  }

  private requireText(bytes: Uint8Array, start: number, end: number): void {
    for (let i = start; i < end; i++)
      if (isControl(bytes[i]))
        this.refuse({ what: `byte ${i - start + 1} of the line is no text, so this is no .cube file` });
  }

  private lut(): Lut {
    const { kind = '3d', size, domainMin = zeros, domainMax = ones } = this.header;
    const values = this.table!.finish();
    return { kind, size, domainMin, domainMax, values };
  }

  private sizeInWords(): string {
    const { kind, size } = this.header;
    return kind === '3d' ? `${size} x ${size} x ${size}` : `LUT_1D_SIZE ${size}`;
  }

  private noteLongLine(): void {
    this.note('long', `is longer than the ${limits.lineBytes} bytes that the format allows`);
  }

  private note(kind: string, what: string, line = this.lines.number): void {
    if (!this.notes.has(kind)) this.notes.set(kind, `Line ${line} ${what}.`);
  }

  private noteWhatReadersSay(lut: Lut): void {
    if (lut.kind === '3d' && lut.size > limits.commonLatticeSize)
      this.notes.set('size', `Its size is ${lut.size}; common readers stop at ${limits.commonLatticeSize}.`);
    if (!isUnitDomain(lut))
      this.notes.set('domain', 'Its domain is not 0 to 1; some readers ignore that, and show other colours.');
  }

  private readonly refuse = (fault: Fault): never => {
    const line = this.ended ? Math.max(1, this.lines.number - 1) : this.lines.number;
    throw new InputError({ file: this.file, line, ...fault });
  };
}

const hash = 35;
const isLetter = (byte: number): boolean => ((byte | 32) >= 97 && (byte | 32) <= 122) || byte === 95;
const beginsNumber = (byte: number): boolean => '+-.0123456789'.includes(String.fromCharCode(byte));
