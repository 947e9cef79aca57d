// What the page is made of: the state in, what stands on the screen out. Parts change nothing themselves: they call actions.
import type { Sight } from '../display/sight.js';
import type { Engine } from '../engine/engine.js';
import type { Findings } from '../engine/findings.js';
import type { Store } from '../state/store.js';

/** What every part is given. */
export interface Page {
  readonly store: Store;
  readonly findings: Findings;
  readonly engine: Engine;
  /** The picture's canvas, one element kept in its place, and who draws on it. */
  readonly sight: Sight;
  readonly dialogs: Dialogs;
  /** Something is to be seen anew. */
  changed(): void;
}

/** Which box lies over the page, and what was last chosen in it. */
export interface Dialogs {
  open?: 'save' | 'add';
  plain: boolean;
  title: string;
  /** Whether the recording is shown while something is held. */
  holding: boolean;
}
