import { createStore, del, get, keys, set } from 'idb-keyval';

/** A still as it was chosen: its file. */
export interface StoredStill {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const store = () => createStore('gatelight-stills', 'files');

/** Stills of this visit, for browsers that keep nothing (private windows, a full disk). */
const unkept = new Map<string, StoredStill>();

/** Keeps a still's file in this browser. @returns whether it will be there after a reload */
export async function keepStill(id: string, still: StoredStill): Promise<boolean> {
  try {
    await set(id, still, store());
    return true;
  } catch {
    unkept.set(id, still);
    return false;
  }
}

export async function storedStill(id: string): Promise<StoredStill | undefined> {
  const here = unkept.get(id);
  return here ?? (await get<StoredStill>(id, store()).catch(() => undefined));
}

/** Names of all files that are kept, by this tab or another. */
export const storedNames = (): Promise<string[]> => keys<string>(store()).catch(() => []);

export async function dropStill(id: string): Promise<void> {
  unkept.delete(id);
  await del(id, store()).catch(() => undefined);
}
