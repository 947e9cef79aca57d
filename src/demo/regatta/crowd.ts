import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { regattaPeople } from '../../../shared/demo/layout/regatta-people.js';
import type { Layer } from '../drawing/layer.js';
import { type Stage, standFigure } from '../people/figure.js';
import { daylight, palette, view } from './setting.js';

const stage: Stage = { view, palette, light: daylight, inShadow: [0.24, 0.27, 0.33] };

/** Stands one group of the regatta's people on the quay. */
export function drawPeople(layer: Layer, group: 'inShade' | 'onQuay' | 'near'): void {
  const plans: readonly FigurePlan[] = regattaPeople[group];
  for (const plan of plans) standFigure(layer, plan, stage);
}
