export type { Confidence } from './confidence.js';
export { type FadingKind, type FadingKindName, fadingKinds } from './fading-kinds.js';
export { checkMarks, type MarkKind, markKinds, type Marks, type Rectangle, smallestEdge } from './marks.js';
export {
  type MeasureOptions,
  type Measurement,
  measureReel,
  type ReportPoint,
  type Still,
} from './measure-reel.js';
