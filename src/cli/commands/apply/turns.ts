/** Does a piece of work when its turn comes. */
export type TakeTurn = <T>(work: () => Promise<T>) => Promise<T>;

/** Lets at most `count` pieces of work go on at once; the others wait, first come first. */
export function turns(count: number): TakeTurn {
  let free = count;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (free > 0) free--;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      return await work();
    } finally {
      // A turn that is handed on stays taken.
      const next = waiting.shift();
      if (next === undefined) free++;
      else next();
    }
  };
}

/**
 * Starts `work` for one item after the other, in their order, at most `atOnce` at a time. When one fails, or `goesOn` says
 * no, no other is started.
 */
export async function inTurn<T>(
  items: readonly T[],
  atOnce: number,
  work: (item: T) => Promise<void>,
  goesOn: () => boolean = () => true,
): Promise<void> {
  const queue = items.values();
  let failed = false;
  const worker = async () => {
    for (const item of queue) {
      if (failed || !goesOn()) return;
      await work(item).catch((error: unknown) => {
        failed = true;
        throw error;
      });
    }
  };
  await Promise.all(Array.from({ length: atOnce }, worker));
}
