import { regattaBoats } from '../../../shared/demo/layout/regatta-boats.js';
import type { Layer } from '../drawing/layer.js';
import type { DemoScene } from '../scene.js';
import { paintAwning, paintInShade } from './awning.js';
import { paintBoat } from './boat.js';
import { paintBoathouse } from './boathouse.js';
import { paintBough } from './bough.js';
import { paintBunting, paintGulls } from './bunting.js';
import { drawPeople } from './crowd.js';
import { paintQuay } from './quay.js';
import { paintPoint, paintShore } from './shore.js';
import { paintSky } from './sky.js';
import { paintWater } from './water.js';

function paintRegatta(frame: Layer): void {
  paintSky(frame);
  paintShore(frame);
  paintPoint(frame);
  paintWater(frame);
  for (const boat of regattaBoats) paintBoat(frame, boat);
  paintGulls(frame);
  paintBoathouse(frame);
  paintQuay(frame);
  paintInShade(frame);
  drawPeople(frame, 'inShade');
  paintAwning(frame);
  drawPeople(frame, 'onQuay');
  paintBunting(frame);
  drawPeople(frame, 'near');
  paintBough(frame);
}

export const regatta: DemoScene = {
  title: 'harbour regatta',
  note: 'A summer noon: white sails, red, blue and varnished hulls, skins from fair to deep, leaves, deep shade under an awning.',
  stock: 'reversal-late',
  grain: 1200,
  paint: paintRegatta,
};
