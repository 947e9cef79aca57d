/** The reel log: one line of JSON a reel, only ever appended to. */
export { appendReel } from './reel-log/append.js';
export { reelLogCsv } from './reel-log/csv.js';
export type { ReelEntry } from './reel-log/entry.js';
export { isRecordTime, longestRecord } from './reel-log/entry.js';
export type { DamagedLine, ReelLog } from './reel-log/read.js';
export { largestLog, readReelLog } from './reel-log/read.js';
