import { type Primaries, primaries } from '../colour/primaries/index.js';
import { rgbToRgb } from '../colour/primaries/rgb-matrix.js';
import { diagonal3, invert3, type Matrix3, multiply3, transform3, type Triple } from '../maths/matrix3.js';
import type { FilmLight } from './film-light.js';

/**
 * How much further from white than BT.2020 the primaries lie in which densities are taken. In BT.2020 the deep blues of
 * film (much cyan and magenta, no yellow) have negative green, before a warm lamp strongly so, and a negative light has
 * no density. Out here every colour of 0 to 3.2 of each dye is positive before every lamp, and so is every colour of the
 * primaries that a look can name.
 */
const outward = 0.15;

const { red, green, blue, white } = primaries.bt2020;
const moved = ([x, y]: Primaries['red']): Primaries['red'] => [
  x + outward * (x - white[0]),
  y + outward * (y - white[1]),
];

const densityPrimaries: Primaries = {
  title: 'density primaries',
  source: 'BT.2020 moved outward',
  red: moved(red),
  green: moved(green),
  blue: moved(blue),
  white,
};

/** A light in the primaries of the densities, and the ways from and to BT.2020, each balanced to the light's open gate. */
export interface DensityLight {
  readonly light: FilmLight;
  readonly fromBt2020: Matrix3;
  readonly toBt2020: Matrix3;
}

export function densityLight({ red, green, blue, openGate }: FilmLight): DensityLight {
  const wider = rgbToRgb(primaries.bt2020, densityPrimaries);
  const gate = transform3(wider, openGate);
  const balance: Triple = [1 / gate[0], 1 / gate[1], 1 / gate[2]];
  const fromBt2020 = multiply3(diagonal3(balance), multiply3(wider, diagonal3(openGate)));
  const channel = (k: 0 | 3 | 6) =>
    red.map((r, i) => fromBt2020[k] * r + fromBt2020[k + 1] * green[i] + fromBt2020[k + 2] * blue[i]);
  return {
    light: { red: channel(0), green: channel(3), blue: channel(6), openGate: gate },
    fromBt2020,
    toBt2020: invert3(fromBt2020),
  };
}
