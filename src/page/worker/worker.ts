import '../quiet-schema.js';
import { InputError, type Problem } from '../../errors/input-error.js';
import { type Show, type Shown, showing } from './showing.js';
import { tasks } from './tasks.js';

/** What a worker is asked, and what it answers; `call` holds them together. */
export interface Request {
  readonly call: number;
  readonly task: keyof typeof tasks;
  readonly given: unknown;
}
export type Reply =
  | { readonly call: number; readonly result: unknown }
  | { readonly call: number; readonly problems: readonly Problem[] }
  | { readonly call: number; readonly fault: string };

const scope = self as unknown as {
  onmessage: ((event: MessageEvent<Request | Show>) => void) | null;
  postMessage: (reply: Reply | Shown, transfer: Transferable[]) => void;
};

/** The buffers of an answer that may be handed over instead of copied: those of fresh typed arrays. */
function buffersOf(result: unknown): Transferable[] {
  if (result instanceof Float32Array) return [result.buffer];
  if (Array.isArray(result))
    return result.flatMap((one) => buffersOf((one as { data?: unknown } | null)?.data ?? 0));
  return result instanceof Uint8Array || result instanceof Uint16Array ? [result.buffer] : [];
}

async function answer({ call, task, given }: Request): Promise<void> {
  try {
    const result = await (tasks[task] as (given: unknown) => Promise<unknown>)(given);
    scope.postMessage({ call, result }, buffersOf(result));
  } catch (error) {
    if (error instanceof InputError) scope.postMessage({ call, problems: error.problems }, []);
    else scope.postMessage({ call, fault: error instanceof Error ? error.message : String(error) }, []);
  }
}

/** One after the other, in the order in which they were asked. */
let last = Promise.resolve();
const show = showing((shown) => scope.postMessage(shown, []));
scope.onmessage = ({ data }) => {
  if ('show' in data) show(data);
  else last = last.then(() => answer(data));
};
