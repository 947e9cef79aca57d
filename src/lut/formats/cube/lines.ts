import { limits } from '../limits.js';
import { isBlank, latinText } from './text.js';

const lineFeed = 10;
const carriageReturn = 13;
const hash = 35;

/** What a line splitter tells its owner; the bytes are good until the call returns. */
export interface LineReceiver {
  line(bytes: Uint8Array, start: number, end: number): void;
  /**
   * Takes whole lines that it knows at once, from where a line begins: where they end, and how many.
   * @param limit behind the last line feed of the bytes
   */
  takeLines(
    bytes: Uint8Array,
    start: number,
    limit: number,
  ): { readonly end: number; readonly lines: number };
  /** A carriage return without a line feed ended a line. */
  loneReturn(): void;
  /** The line is longer than its kind may be; the bytes are how it begins. Never returns. */
  tooLong(bytes: Uint8Array, start: number, end: number, most: number): never;
}

/**
 * Cuts bytes, as they come, into lines that end in LF, CR LF or CR. It holds no more than one line, and no
 * more of it than a line may have.
 */
export class LineSplitter {
  /** The number of the line now being read, from 1. */
  number = 1;
  private readonly carry = new Uint8Array(limits.textLineBytes + 1);
  private carried = 0;
  private afterReturn = false;

  constructor(private readonly receiver: LineReceiver) {}

  write(chunk: Uint8Array): void {
    let start = 0;
    const limit = chunk.lastIndexOf(lineFeed) + 1;
    while (start < chunk.length) {
      if (this.afterReturn) {
        this.afterReturn = false;
        if (chunk[start] === lineFeed) start++;
        else this.receiver.loneReturn();
        continue;
      }
      if (this.carried === 0) {
        start = this.take(chunk, start, limit);
        if (start === chunk.length) break;
      }
      const stop = Math.min(chunk.length, start + this.carry.length - this.carried);
      let end = start;
      while (end < stop && chunk[end] !== lineFeed && chunk[end] !== carriageReturn) end++;
      const complete = end < chunk.length && (chunk[end] === lineFeed || chunk[end] === carriageReturn);
      if (complete && this.carried === 0) this.emit(chunk, start, end);
      else {
        this.carry.set(chunk.subarray(start, end), this.carried);
        this.carried += end - start;
        if (complete) this.emit(this.carry, 0, this.carried);
        else this.measure(this.carry, 0, this.carried);
      }
      if (complete) this.afterReturn = chunk[end] === carriageReturn;
      start = complete ? end + 1 : end;
    }
  }

  /** Gives out the last line, if it did not end. */
  end(): void {
    if (this.afterReturn) this.receiver.loneReturn();
    if (this.carried > 0) this.emit(this.carry, 0, this.carried);
  }

  /** Lets the owner take what it can. @returns where the next line begins */
  private take(chunk: Uint8Array, start: number, limit: number): number {
    const { end, lines } = this.receiver.takeLines(chunk, start, limit);
    this.number += lines;
    return end;
  }

  private emit(bytes: Uint8Array, start: number, end: number): void {
    this.measure(bytes, start, end);
    this.carried = 0;
    this.receiver.line(bytes, start, end);
    this.number++;
  }

  /** Stops a line that has grown longer than its kind may be. */
  private measure(bytes: Uint8Array, start: number, end: number): void {
    const length = end - start;
    if (length <= limits.lineBytes) return;
    const most = isTextLine(bytes, start, end) ? limits.textLineBytes : limits.lineBytes;
    if (length > most) this.receiver.tooLong(bytes, start, end, most);
  }
}

/** Whether a line holds a comment or a title, which may be longer than the specification has it. */
function isTextLine(bytes: Uint8Array, start: number, end: number): boolean {
  let first = start;
  while (first < end && isBlank(bytes[first])) first++;
  return bytes[first] === hash || latinText(bytes, first, Math.min(end, first + 5)).toUpperCase() === 'TITLE';
}
