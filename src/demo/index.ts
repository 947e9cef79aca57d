// Scenes drawn, filmed and faded by the model, to try looks on where no reel is at hand. Knows light, film and
// pictures; knows nothing of files, terminal or screen.

import { InputError } from '../errors/input-error.js';
import { nearestName } from '../errors/nearest-name.js';
import { makePicture, lastCode, type Picture } from '../picture/picture.js';
import { frameLayer } from './drawing/layer.js';
import { paintWedge } from './drawing/wedge.js';
import { regatta } from './regatta/index.js';
import type { DemoScene } from './scene.js';
import { type DemoAgeName, demoAges } from './stock/ages.js';
import { addGrain } from './stock/grain.js';
import { throughLens } from './stock/lens.js';
import { filmAndCamera, leastLogExposure, type ReversalStock } from './stock/reversal-film.js';
import { tram } from './tram/index.js';

export { demoAges, type DemoAgeName } from './stock/ages.js';
export { wedgeBoxes, wedgeSteps } from './drawing/wedge.js';

/** The demo stills by name. */
export const demoStills = { regatta, tram } as const satisfies Record<string, DemoScene>;

export type DemoStillName = keyof typeof demoStills;

export interface DemoStillOptions {
  /** Pixels; the scenes are drawn for 4 to 3. */
  readonly width?: number;
  readonly height?: number;
  readonly bits?: Picture['bits'];
  /** The state the film is in. */
  readonly age?: DemoAgeName;
  /** The stock it was filmed on; the scene's own when left out. A reel has one for all its scenes. */
  readonly stock?: ReversalStock;
}

function requireName(name: string, known: object, field: string): void {
  if (Object.hasOwn(known, name)) return;
  const names = Object.keys(known);
  const near = nearestName(name, names);
  throw new InputError({
    field,
    what: `"${name}" is not known`,
    allowed: names.join(', '),
    ...(near === undefined ? {} : { hint: `Did you mean "${near}"?` }),
  });
}

/**
 * Draws a demo still: the scene is painted, filmed, aged, and taken by a camera before the gate light. The same options
 * give the same picture everywhere.
 * @returns RGB, BT.709 primaries, sRGB code values, full range, the open gate at the last code
 * @throws InputError for a still or a state that is not known
 */
export function renderDemoStill(name: DemoStillName, options: DemoStillOptions = {}): Picture {
  const { width = 960, height = 720, bits = 8, age = 'in-good-order' } = options;
  requireName(name, demoStills, 'still');
  requireName(age, demoAges, 'age');
  const scene: DemoScene = demoStills[name];
  const { stock = scene.stock } = options;
  const picture = makePicture(width, height, { channels: 3, bits });
  const frame = frameLayer(width, height);
  scene.paint(frame);
  const exposed = throughLens(frame);
  paintWedge({ ...frame, light: exposed.light });
  const least = 10 ** leastLogExposure;
  const values = new Float64Array(exposed.light.length);
  for (let i = 0; i < values.length; i++) values[i] = Math.log10(Math.max(exposed.light[i], least));
  addGrain(values, width, height, scene.grain);
  filmAndCamera(stock, demoAges[age])(values, width * height);
  const last = lastCode(bits);
  for (let i = 0; i < values.length; i++)
    picture.data[i] = Math.round(last * Math.min(1, Math.max(0, values[i])));
  return picture;
}
