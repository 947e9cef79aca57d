import { InputError } from '../../errors/input-error.js';
import type { Tasks } from './tasks.js';
import type { Reply } from './worker.js';
import CoreWorker from './worker.ts?worker&inline';

type Given<Name extends keyof Tasks> = Parameters<Tasks[Name]>[0];
type Result<Name extends keyof Tasks> = Awaited<ReturnType<Tasks[Name]>>;

export interface Hand {
  /** Does a task of the core. @throws InputError, as the core does; Error for a fault of the program */
  call<Name extends keyof Tasks>(task: Name, given: Given<Name>): Promise<Result<Name>>;
}

export const newWorker = (): Worker => new CoreWorker();

/** A worker that answers one task after the other; it starts with the first. */
export function startHand(): Hand {
  let worker: Worker | undefined;
  const waiting = new Map<number, { done: (result: never) => void; failed: (error: Error) => void }>();
  let calls = 0;
  const answered = ({ data }: MessageEvent<Reply>) => {
    const asked = waiting.get(data.call);
    waiting.delete(data.call);
    if ('result' in data) asked?.done(data.result as never);
    else asked?.failed('problems' in data ? new InputError(data.problems) : new Error(data.fault));
  };
  return {
    call: (task, given) =>
      new Promise((done, failed) => {
        waiting.set(++calls, { done, failed });
        worker ??= Object.assign(newWorker(), { onmessage: answered });
        worker.postMessage({ call: calls, task, given });
      }),
  };
}

/**
 * Keeps to the newest: while a task runs, of all that is asked only the last is done after it.
 * @param work does one and hands it on
 */
export function newestOnly<Asked>(work: (asked: Asked) => Promise<void>): (asked: Asked) => void {
  let running = false;
  let next: { readonly asked: Asked } | undefined;
  return async (asked) => {
    next = { asked };
    if (running) return;
    running = true;
    while (next !== undefined) {
      const { asked: now } = next;
      next = undefined;
      await work(now);
    }
    running = false;
  };
}
