/** What was, what is and what could be again: every change of a document, with a word for it. */
export interface History<Document> {
  readonly past: readonly Step<Document>[];
  readonly now: Document;
  readonly future: readonly Step<Document>[];
}

interface Step<Document> {
  readonly document: Document;
  /** What was changed, for the buttons: `loss of cyan dye`. */
  readonly change: string;
  /** Changes of one kind that follow each other closely are one step: a slider's way. */
  readonly gesture?: string;
  readonly at: number;
}

/** Changes of one gesture this near, in ms, are one step. */
const gestureMs = 1200;
const mostSteps = 300;

export const startHistory = <Document>(now: Document): History<Document> => ({ past: [], now, future: [] });

/** @param at the time in ms */
export function recorded<Document>(
  { past, now }: History<Document>,
  next: Document,
  change: string,
  at: number,
  gesture?: string,
): History<Document> {
  const last = past[past.length - 1];
  const goesOn = gesture !== undefined && last?.gesture === gesture && at - last.at < gestureMs;
  const step = { document: goesOn ? last.document : now, change, gesture, at };
  return { past: [...(goesOn ? past.slice(0, -1) : past), step].slice(-mostSteps), now: next, future: [] };
}

export function undone<Document>(history: History<Document>): History<Document> {
  const { past, now, future } = history;
  const last = past[past.length - 1];
  if (last === undefined) return history;
  return { past: past.slice(0, -1), now: last.document, future: [{ ...last, document: now }, ...future] };
}

export function redone<Document>(history: History<Document>): History<Document> {
  const { past, now, future } = history;
  const [next, ...rest] = future;
  if (next === undefined) return history;
  const step = { document: now, change: next.change, at: 0 };
  return { past: [...past, step], now: next.document, future: rest };
}
