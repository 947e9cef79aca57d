import { building } from './building.js';
import { cloth } from './cloth.js';
import type { ReflectanceCurve } from './curve.js';
import { nature } from './nature.js';
import { skin } from './skin.js';

export type { ReflectanceCurve } from './curve.js';

/** Every surface that the demo scenes are made of. */
export const reflectances = { ...skin, ...cloth, ...building, ...nature } satisfies Record<
  string,
  ReflectanceCurve
>;

export type SurfaceName = keyof typeof reflectances;
