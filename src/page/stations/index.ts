import { eye } from './eye.js';
import { file } from './file.js';
import { gate } from './gate.js';
import { lamp } from './lamp.js';
import { print } from './print.js';
import { screen } from './screen.js';
import type { Station } from './station.js';
import { stock } from './stock.js';
import type { StationName } from './up-to.js';

/** The way from gate to file. */
export const stations = { gate, stock, print, lamp, screen, eye, file } satisfies Record<
  StationName,
  Station
>;

export const stationList: readonly Station[] = Object.values(stations);
