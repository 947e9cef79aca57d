import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import type { Triple } from '../../maths/matrix3.js';
import { lay, type Layer } from '../drawing/layer.js';
import { project, type Viewpoint } from '../drawing/perspective.js';
import { lightRelief } from '../drawing/relief-colour.js';
import type { BodyLight } from '../drawing/relief-light.js';
import { makeRelief, type Stand } from '../drawing/relief.js';
import type { Palette } from '../surfaces/palette.js';
import { addArm } from './arm.js';
import { addLegs, addTorso, buildOf } from './build.js';
import { addExtras, clothesStrokes } from './dress.js';
import { addHead } from './head.js';
import { throwShadow } from './shadow.js';
import { outfitOf } from './wardrobe.js';

/** Height of a grown head, metres. */
export const headMetres = 0.235;

/** A figure with its feet at the stand, lit, ready to be laid on the layer; undefined outside it. */
export function drawFigure(
  layer: Layer,
  stand: Stand,
  plan: FigurePlan,
  palette: Palette,
  light: BodyLight,
): Layer | undefined {
  const relief = makeRelief(layer, stand, [-1.7, -0.3, 1.7, plan.tall + 0.9]);
  if (!relief) return undefined;
  const outfit = outfitOf(plan, palette);
  const build = buildOf(plan);
  addLegs(relief, plan, outfit, build);
  addTorso(relief, plan, outfit, build);
  addArm(relief, plan, outfit, plan.left, -1, build);
  addArm(relief, plan, outfit, plan.right, 1, build);
  addExtras(relief, plan, outfit, build);
  const onHead = addHead(relief, plan, outfit, build.head);
  return lightRelief(relief, light, [...clothesStrokes(plan, outfit, build), ...onHead]);
}

/** What figures of a scene have in common. */
export interface Stage {
  readonly view: Viewpoint;
  readonly palette: Palette;
  readonly light: BodyLight;
  /** Share of the light that a shadow leaves on the ground, for each film layer. */
  readonly inShadow: Triple;
}

/** Stands a figure on the ground, its shadow behind it. */
export function standFigure(layer: Layer, plan: FigurePlan, { view, palette, light, inShadow }: Stage): void {
  const { across, away, sunShare = 1, skyShare = 1 } = plan;
  const [x, y] = project(view, across, 0, away);
  const part = drawFigure(layer, { x, y, size: (headMetres * view.focal) / away }, plan, palette, {
    toSun: light.toSun,
    sun: light.sun * sunShare,
    sky: light.sky * skyShare,
    bounce: light.bounce * (0.3 + 0.7 * skyShare),
  });
  if (!part) return;
  if (sunShare > 0) throwShadow(layer, part, view, light.toSun, across, away, inShadow);
  lay(layer, part);
}
