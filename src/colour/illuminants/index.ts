// The standard lights by name. Knows spectra; knows nothing of lamps in projectors.
import { a } from './a.js';
import { d50 } from './d50.js';
import { d55 } from './d55.js';
import { d65 } from './d65.js';
import { d75 } from './d75.js';
import { e } from './e.js';
import type { Illuminant } from './illuminant.js';

export const illuminants = { a, d50, d55, d65, d75, e } satisfies Record<string, Illuminant>;
export type { Illuminant } from './illuminant.js';
