import { curve, skewBell, type Between, type Curve } from './grid.js';

/** The dyes of a stock (peak 1), its clear base, and how it answers to light. */
export interface Stock {
  readonly dyes: readonly [cyan: Curve, magenta: Curve, yellow: Curve];
  readonly base: Curve;
  /** Factors by which the layers miss a visual neutral. */
  readonly balance: readonly [number, number, number];
  /** Spectral sensitivities of the red, green and blue layers. */
  readonly layers: readonly [Curve, Curve, Curve];
  /** Equivalent neutral density of a layer (0 = cyan, 1 = magenta, 2 = yellow) for log10 exposure, white = 0. */
  readonly density: (layer: number, logExposure: number) => number;
  /** Density of unexposed film, layer by layer. */
  readonly densest: readonly number[];
  /** How far a layer's development holds back the others'. */
  readonly interimage: number;
}

const peakOne = (values: Curve): Curve => {
  const top = Math.max(...values);
  return values.map((value) => value / top);
};

/** Dyes as skewed bells over wavelength with unwanted absorptions as further bells. */
function skewedDyes(between: Between): Stock['dyes'] {
  const cyan = [
    between(640, 665),
    between(46, 62),
    between(38, 50),
    between(0.06, 0.16),
    between(0.06, 0.16),
  ];
  const magenta = [
    between(536, 553),
    between(30, 40),
    between(24, 33),
    between(0.14, 0.3),
    between(0.01, 0.05),
  ];
  const yellow = [between(436, 454), between(36, 46), between(30, 40), between(0, 0.02)];
  return [
    peakOne(
      curve(
        (w) =>
          skewBell(w, cyan[0], cyan[1], cyan[2]) +
          cyan[3] * skewBell(w, 400, 60, 60) +
          cyan[4] * skewBell(w, 540, 60, 60),
      ),
    ),
    peakOne(
      curve(
        (w) =>
          skewBell(w, magenta[0], magenta[1], magenta[2]) +
          magenta[3] * skewBell(w, 425, 50, 35) +
          magenta[4],
      ),
    ),
    peakOne(curve((w) => skewBell(w, yellow[0], yellow[1], yellow[2]) + yellow[3])),
  ];
}

/** Dyes as bands over wave number, each with a shoulder at higher energy, as dyes in solution have. */
function bandDyes(between: Between): Stock['dyes'] {
  const dye = (nm: number, width: number, step: number, share: number, tail: number) => {
    const peak = 1e7 / nm;
    const band = (nu: number, at: number, w: number) => 1 / Math.cosh((nu - at) / w) ** 1.6;
    return peakOne(
      curve((w) => {
        const nu = 1e7 / w;
        return (
          band(nu, peak, width) + share * band(nu, peak + step, 1.25 * width) + tail * band(nu, 25500, 3300)
        );
      }),
    );
  };
  return [
    dye(between(648, 675), between(780, 980), between(1300, 1700), between(0.25, 0.45), between(0.1, 0.22)),
    dye(between(540, 558), between(720, 950), between(1300, 1600), between(0.3, 0.5), between(0.16, 0.32)),
    dye(between(438, 458), between(1250, 1600), between(1600, 2200), between(0.15, 0.4), 0),
  ];
}

const yellowishBase = (between: Between): Curve => {
  const [level, blue] = [between(0.03, 0.09), between(0, 0.05)];
  return curve((w) => level + blue * Math.exp(-(w - 380) / 60));
};

function layersOf(between: Between): Stock['layers'] {
  const [red, green, blue] = [between(625, 650), between(540, 555), between(435, 455)];
  return [
    curve((w) => skewBell(w, red, 38, 20)),
    curve((w) => skewBell(w, green, 28, 24)),
    curve((w) => skewBell(w, blue, 32, 28)),
  ];
}

/** The falling curve of reversal film; `shape` runs from 1 at -infinity to 0 with unit slope at 0. */
function characteristic(between: Between, shape: (x: number) => number): Pick<Stock, 'density' | 'densest'> {
  const [gamma, top] = [between(1.35, 1.75), between(2.55, 3.2)];
  const layer = Array.from({ length: 3 }, () => {
    const range = top + between(-0.12, 0.12);
    const steep = gamma * (1 + between(-0.04, 0.04));
    const greyDensity = 0.95 + between(-0.05, 0.05);
    // place the curve so that a grey of 18 % has the density of a well-exposed grey
    let [low, high] = [-4, 2];
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (range * shape(((Math.log10(0.18) - middle) * steep) / range) < greyDensity) low = middle;
      else high = middle;
    }
    return { range, steep, at: low };
  });
  return {
    densest: layer.map(({ range }) => range),
    density: (k, x) => layer[k].range * shape(((x - layer[k].at) * layer[k].steep) / layer[k].range),
  };
}

const logistic = (x: number): number => 1 / (1 + Math.exp(4 * x));
/** Sharper toe and shoulder than the logistic, and not symmetrical. */
const sharp = (x: number): number => {
  const straight = 0.5 - x;
  const soft = (t: number, w: number) => w * Math.log1p(Math.exp(t / w));
  return Math.max(0, soft(straight, 0.07) - soft(straight - 1, 0.11));
};

const nearOne = (between: Between): Stock['balance'] => [
  between(0.96, 1.04),
  between(0.97, 1.03),
  between(0.96, 1.04),
];

export const tuningStock = (between: Between): Stock => ({
  dyes: skewedDyes(between),
  base: yellowishBase(between),
  balance: nearOne(between),
  layers: layersOf(between),
  ...characteristic(between, logistic),
  interimage: between(0, 0.12),
});

export const asideStock = (between: Between): Stock => ({
  dyes: bandDyes(between),
  base: yellowishBase(between),
  balance: nearOne(between),
  layers: layersOf(between),
  ...characteristic(between, sharp),
  interimage: between(0, 0.18),
});
