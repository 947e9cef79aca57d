import { primaries } from '../../colour/primaries/index.js';
import { rgbToXyz } from '../../colour/primaries/rgb-matrix.js';
import { invert3, transformRun3, type Run, type Triple } from '../../maths/matrix3.js';
import { limits } from '../formats/limits.js';
import { nodeCode, nodePosition, type CurveTable, type Lattice } from '../lattice.js';
import { leastVolume } from './cell-volume.js';
import type { Check, CheckContext, Finding } from './finding.js';
import { atMost, counted, percent, shown } from './finding.js';
import { pictureRange } from './neutral-axis.js';

/** A volume that shrinks to less than this is as good as flat: a grey or clipped part of the table. */
const flat = -1e-3;
/** Ours: a few corners may fold that no film shows; more is seen as false edges of colour. */
const mostFolded = 0.02;

/** How many parts of a table there are, how many are folded, and where the worst lies, in input codes. */
class Folds {
  parts = 0;
  folded = 0;
  where: Triple = [0, 0, 0];
  private worst = flat;

  /** @param slope volume or slope of the part in the output, as a multiple of its own in the input */
  count(slope: number, red: number, green: number, blue: number): void {
    this.parts++;
    if (slope >= flat) return;
    this.folded++;
    if (slope >= this.worst) return;
    this.worst = slope;
    this.where = [red, green, blue];
  }

  finding(answer: Pick<Finding, 'name' | 'severity'>, of: string): Finding {
    const share = this.parts === 0 ? 0 : this.folded / this.parts;
    const [r, g, b] = this.where.map(shown);
    return atMost({
      ...answer,
      sentence:
        this.folded === 0
          ? `No colours change places: the table is nowhere folded over (${of}).`
          : `Colours change places in ${counted(this.folded)} of ${counted(this.parts)} cells (${of}), ${percent(share)}, most around input ${r} ${g} ${b}; limit ${percent(mostFolded)}.`,
      figure: 100 * share,
      limit: 100 * mostFolded,
      unit: '%',
    });
  }
}

const ordinaryScreen = invert3(rgbToXyz(primaries.bt709));

/** How far the light of a colour may lie beyond an ordinary screen's colours and still count as one of them. */
const screenMargin = 1e-3;

/** Which input codes of a run are colours that an ordinary screen holds; the run is overwritten. */
function onScreen(decodeInput: Run, run: Float64Array, count: number): (i: number) => boolean {
  decodeInput(run, count);
  transformRun3(ordinaryScreen, run, count);
  const within = (light: number) => light >= -screenMargin && light <= 1 + screenMargin;
  return (i) => within(run[3 * i]) && within(run[3 * i + 1]) && within(run[3 * i + 2]);
}

/** Folds of the cells that hold codes of the picture: of all, and of those that an ordinary screen holds. */
function foldsOfLattice(context: CheckContext, lattice: Lattice): { all: Folds; screen: Folds } {
  const { size, values, domainMin, domainMax } = lattice;
  const { black, white } = pictureRange(context);
  const last = size - 1;
  const place = (code: number, c: number) => nodePosition(code, domainMin[c], domainMax[c], last);
  const middle = (i: number, c: number) => nodeCode(i + 0.5, size, domainMin[c], domainMax[c]);
  // Larger tables than devices load are looked at in every second cell.
  const step = Math.ceil(last / limits.commonLatticeSize);
  const along = [0, 1, 2].map((c) => {
    const cells: number[] = [];
    for (let i = Math.floor(place(black, c)); i < Math.ceil(place(white, c)); i += step) cells.push(i);
    return cells;
  });
  const width = domainMax.map((max, c) => max - domainMin[c]);
  const perVolume = last ** 3 / (width[0] * width[1] * width[2]);
  const strides = [3, 3 * size, 3 * size * size] as const;
  const cells = { values, strides, perVolume };
  const folds = { all: new Folds(), screen: new Folds() };
  const reds = along[0].map((r) => middle(r, 0));
  const line = new Float64Array(3 * reds.length);
  for (const b of along[2])
    for (const g of along[1]) {
      const [green, blue] = [middle(g, 1), middle(b, 2)];
      for (let i = 0; i < reds.length; i++) {
        line[3 * i] = reds[i];
        line[3 * i + 1] = green;
        line[3 * i + 2] = blue;
      }
      const isOnScreen = onScreen(context.decodeInput, line, reds.length);
      const row = strides[1] * g + strides[2] * b;
      for (let i = 0; i < reds.length; i++) {
        const volume = leastVolume(cells, row + strides[0] * along[0][i]);
        folds.all.count(volume, reds[i], green, blue);
        if (isOnScreen(i)) folds.screen.count(volume, reds[i], green, blue);
      }
    }
  return folds;
}

/** A curve folds where it falls. */
function foldsOfCurves({ size, values, domainMin, domainMax }: CurveTable): Folds {
  const folds = new Folds();
  for (let i = 3; i < values.length; i++) {
    const channel = i % 3;
    const slope = ((values[i] - values[i - 3]) * (size - 1)) / (domainMax[channel] - domainMin[channel]);
    const code = nodeCode(Math.floor(i / 3) - 0.5, size, domainMin[channel], domainMax[channel]);
    folds.count(slope, code, code, code);
  }
  return folds;
}

export const foldOvers: Check = {
  question: 'Do colours keep their order, or is the table folded over anywhere?',
  ask: (context) => {
    const { lut } = context;
    const fault = { name: 'fold-overs', severity: 'fault' } as const;
    if (lut.kind === '1d') return [foldsOfCurves(lut).finding(fault, 'curves')];
    const { all, screen } = foldsOfLattice(context, lut);
    return [
      screen.finding(fault, 'colours of an ordinary screen'),
      all.finding({ name: 'fold-overs-anywhere', severity: 'note' }, 'all colours'),
    ];
  },
};
