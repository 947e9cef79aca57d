import { densityOf } from '../film/density.js';
import type { DyeSpace } from './dye-space.js';
import { filmColours } from './film-colours.js';

/** The colours of a still, gathered: each cell the mean of the blocks whose densities lie close together. */
export interface DensityCloud {
  /** Densities relative to the open gate, r g b r g b ... */
  readonly densities: Float64Array;
  /** Blocks in each cell. */
  readonly counts: Float64Array;
}

/** Edge of a cell in density: below what an eye tells apart, above what noise moves. */
const cellEdge = 0.06;
/** Densities are looked for from here, in so many cells: -1 (flare, highlights above the gate) to 6.7. */
const [lowest, cellsAcross] = [-1, 128];

/**
 * @param light linear, in the primaries of densities, on the camera's scale
 * @param openGate linear level of the light without film
 * @param flare stray light to take off, as a share of the open gate
 */
export function densityCloud(light: Float64Array, openGate: number, flare: number): DensityCloud {
  const cells = new Map<number, [count: number, red: number, green: number, blue: number]>();
  for (let i = 0; i < light.length; i += 3) {
    const red = densityOf(light[i] / openGate - flare);
    const green = densityOf(light[i + 1] / openGate - flare);
    const blue = densityOf(light[i + 2] / openGate - flare);
    const place = (d: number) => Math.max(0, Math.min(cellsAcross - 1, Math.floor((d - lowest) / cellEdge)));
    const key = (place(red) * cellsAcross + place(green)) * cellsAcross + place(blue);
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [1, red, green, blue]);
    else {
      cell[0]++;
      cell[1] += red;
      cell[2] += green;
      cell[3] += blue;
    }
  }
  const list = [...cells.values()];
  return {
    counts: Float64Array.from(list, ([count]) => count),
    densities: Float64Array.from(list.flatMap(([count, r, g, b]) => [r / count, g / count, b / count])),
  };
}

/**
 * A still's colours as equivalent dye amounts, with the say of each. The says of a still add up to 1, or to less when it
 * shows fewer colours than a still is taken to be worth: an even grey is one colour, however many its pixels.
 */
export interface AmountCloud {
  readonly amounts: Float64Array;
  readonly weights: Float64Array;
  /** Share of the still's blocks of each colour. */
  readonly shares: Float64Array;
}

/** Tone steps (in mean density) that are levelled, and how many of them are told apart, from -1 up. */
const [toneStep, tones] = [0.1, 80];

/**
 * Large areas must not drown small ones: a cell's say grows with the square root of its blocks, and a tone's with the
 * square root of its cells' says, so that a little deep shadow still speaks beside much sky.
 */
export function amountCloud({ densities, counts }: DensityCloud, space: DyeSpace): AmountCloud {
  const amounts = densities.slice();
  space.toAmounts(amounts);
  const weights = counts.map(Math.sqrt);
  const toneOf = (i: number) => {
    const mean = (amounts[3 * i] + amounts[3 * i + 1] + amounts[3 * i + 2]) / 3;
    return Math.max(0, Math.min(tones - 1, Math.floor((mean + 1) / toneStep)));
  };
  const perTone = new Float64Array(tones);
  weights.forEach((weight, i) => (perTone[toneOf(i)] += weight));
  let [sum, squares] = [0, 0];
  weights.forEach((weight, i) => {
    weights[i] = weight / Math.sqrt(perTone[toneOf(i)]);
    sum += weights[i];
    squares += weights[i] ** 2;
  });
  const different = (sum * sum) / squares;
  const worth = Math.min(1, different / filmColours.coloursAStill);
  const blocks = counts.reduce((a, b) => a + b, 0);
  return {
    amounts,
    weights: weights.map((weight) => (worth * weight) / sum),
    shares: counts.map((count) => count / blocks),
  };
}
