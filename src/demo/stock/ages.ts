import type { StockAge } from '../../film/stock.js';

/** A state a reel is found in: its name for people, and what time did to dyes and base. */
export interface DemoAge extends Omit<StockAge, 'dyes'> {
  readonly title: string;
}

/** Typical states, of a size that reels show; none is measured from a reel. */
export const demoAges = {
  'in-good-order': {
    title: 'in good order',
    loss: { cyan: 0, magenta: 0, yellow: 0 },
    stain: { red: 0, green: 0, blue: 0 },
  },
  warm: {
    title: 'gone warm: a yellow stain, some cyan lost',
    loss: { cyan: 0.16, magenta: 0.06, yellow: 0.02 },
    stain: { red: 0.01, green: 0.05, blue: 0.17 },
  },
  'blue-shifted': {
    title: 'gone blue: yellow and magenta lost',
    loss: { cyan: 0.04, magenta: 0.22, yellow: 0.42 },
    stain: { red: 0.01, green: 0.01, blue: 0.02 },
  },
  pink: {
    title: 'gone pink: most of the cyan lost',
    loss: { cyan: 0.55, magenta: 0.06, yellow: 0.2 },
    stain: { red: 0.01, green: 0.03, blue: 0.08 },
  },
} as const satisfies Record<string, DemoAge>;

export type DemoAgeName = keyof typeof demoAges;
