import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { tramPeople } from '../../../shared/demo/layout/tram-people.js';
import type { Layer } from '../drawing/layer.js';
import { type Stage, standFigure } from '../people/figure.js';
import { daylight, palette, view } from './setting.js';

const stage: Stage = { view, palette, light: daylight, inShadow: [0.34, 0.38, 0.46] };

/** Stands the people at the stop on the snow. */
export function drawPeople(layer: Layer): void {
  const plans: readonly FigurePlan[] = tramPeople;
  for (const plan of plans) standFigure(layer, plan, stage);
}
