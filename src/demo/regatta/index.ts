import type { Layer } from '../drawing/layer.js';
import type { DemoScene } from '../scene.js';
import { type Boat, paintBoat } from './boat.js';
import { paintAwning, paintBoathouse } from './boathouse.js';
import { drawInShade, drawNear, drawOnQuay } from './crowd.js';
import { paintQuay } from './quay.js';
import { palette } from './setting.js';
import { paintPoint, paintShore } from './shore.js';
import { paintSky } from './sky.js';
import { paintWater } from './water.js';

const plain = { strake: palette.varnishedWood, sail: palette.sailWhite } as const;

/** Boats from far to near. */
const boats: readonly Boat[] = [
  { ...plain, across: 4, away: 150, long: 6, mast: 8.5, bow: 1, hull: palette.paintWhite, heel: 0.06 },
  { ...plain, across: -9, away: 120, long: 6, mast: 8.5, bow: 1, hull: palette.paintBlue, heel: 0.07 },
  {
    ...plain,
    across: 16,
    away: 95,
    long: 6,
    mast: 8,
    bow: -1,
    hull: palette.paintRed,
    heel: -0.05,
    sail: palette.cream,
  },
  { ...plain, across: -3.5, away: 62, long: 6, mast: 8, bow: 1, hull: palette.paintGreen, heel: 0.07 },
  {
    ...plain,
    across: 5.6,
    away: 36,
    long: 5.6,
    mast: 7.4,
    bow: -1,
    hull: palette.paintBlue,
    strake: palette.paintWhite,
    heel: -0.05,
  },
  {
    ...plain,
    across: -3.6,
    away: 27,
    long: 5.4,
    mast: 7,
    bow: 1,
    hull: palette.paintRed,
    strake: palette.paintWhite,
    heel: 0.07,
    panel: palette.red,
  },
  {
    ...plain,
    across: 0.75,
    away: 16.5,
    long: 5.4,
    mast: 6.9,
    bow: 1,
    hull: palette.varnishedWood,
    strake: palette.plainWood,
    heel: 0.05,
    planks: true,
  },
];

function paintRegatta(frame: Layer): void {
  paintSky(frame);
  paintShore(frame);
  paintPoint(frame);
  paintWater(frame);
  for (const boat of boats) paintBoat(frame, boat);
  paintBoathouse(frame);
  paintQuay(frame);
  drawInShade(frame);
  paintAwning(frame);
  drawOnQuay(frame);
  drawNear(frame);
}

export const regatta: DemoScene = {
  title: 'harbour regatta',
  note: 'A summer noon: white sails, red, blue and varnished hulls, skins from fair to deep, leaves, deep shade under an awning.',
  stock: 'reversal-late',
  grain: 1200,
  paint: paintRegatta,
};
