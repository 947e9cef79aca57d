/** What one look at a shoot says: good, worth knowing, or to be put right before the reel runs. */
export type Verdict = 'good' | 'note' | 'fault';

export interface CaptureFinding {
  readonly name: string;
  readonly verdict: Verdict;
  /** What was found, whole sentences. */
  readonly sentence: string;
  /** What to do about it, whole sentences. */
  readonly hint?: string;
}

/** Up to `good` nobody sees it, up to `note` it does little harm, beyond it is a fault. */
export interface VerdictLimits {
  readonly good: number;
  readonly note: number;
}

export function verdictOf(value: number, { good, note }: VerdictLimits): Verdict {
  return value <= good ? 'good' : value <= note ? 'note' : 'fault';
}

const order: readonly Verdict[] = ['good', 'note', 'fault'];

export const worse = (a: Verdict, b: Verdict): Verdict => order[Math.max(order.indexOf(a), order.indexOf(b))];

/** Whether the reel may run: no fault, whatever the notes say. */
export const isReady = (findings: readonly CaptureFinding[]): boolean =>
  findings.every(({ verdict }) => verdict !== 'fault');

/** What all findings come to, one sentence about what was looked at, such as `The light`. */
export const readinessText = (what: string, findings: readonly CaptureFinding[]): string =>
  !isReady(findings)
    ? `${what} is NOT READY: put right what is marked FAULT.`
    : findings.every(({ verdict }) => verdict === 'good')
      ? `${what} is ready.`
      : `${what} is ready, if you can live with what is marked note.`;
