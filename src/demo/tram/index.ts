import type { Layer } from '../drawing/layer.js';
import type { DemoScene } from '../scene.js';
import { drawPeople } from './crowd.js';
import { paintFurniture } from './furniture.js';
import { paintFarEnd, paintHouses } from './houses.js';
import { paintSky } from './sky.js';
import { paintStreet } from './street.js';
import { paintTram } from './tramcar.js';
import { paintPark } from './trees.js';

function paintWinter(frame: Layer): void {
  paintSky(frame);
  paintFarEnd(frame);
  paintStreet(frame);
  paintHouses(frame);
  paintPark(frame);
  paintTram(frame);
  paintFurniture(frame);
  drawPeople(frame);
}

export const tram: DemoScene = {
  title: 'tram in winter',
  note: 'A low sun: snow in sun and shade, a cream and red tram, brick houses with lit windows, bare trees and firs, coats and faces, a dark doorway.',
  stock: 'reversal-early',
  grain: 3400,
  paint: paintWinter,
};
