import type { Material } from './materials.js';

/** Where a part of the scene lies, in shares of the frame's width and height from the top left. */
export type Region =
  | { kind: 'all' }
  | { kind: 'below'; y: number; rough?: number }
  | { kind: 'above'; y: number; rough?: number }
  | { kind: 'box'; x: number; y: number; w: number; h: number }
  | { kind: 'blob'; x: number; y: number; rx: number; ry: number; rough?: number }
  | { kind: 'patches'; share: number; scale: number };

export interface Part {
  readonly where: Region;
  /** One material, or two mixed by a fractal. `sky` shines by itself. */
  readonly of: Material | 'sky' | readonly [Material, Material];
  /** Deviation of the logarithm (base 10) of the shading. */
  readonly texture?: number;
  /** Direct light that reaches it, 1 = full, 0 = open shade. */
  readonly lit?: number;
  /** Level, times everything (1 unless given). */
  readonly level?: number;
}

export interface Scene {
  /** Colour temperature of the direct light, and light of the surroundings. */
  readonly directKelvin: number;
  readonly ambient: 'sky' | 'haze' | number;
  /** Light of the surroundings as a share of the direct. */
  readonly ambientShare: number;
  readonly parts: readonly Part[];
  /** Exposure against the usual, in stops. */
  readonly stops?: number;
}

const sun = { directKelvin: 5400, ambient: 'sky', ambientShare: 0.16 } as const;
const cloud = { directKelvin: 6200, ambient: 'haze', ambientShare: 0.6 } as const;
const lamp = { directKelvin: 2900, ambient: 2700, ambientShare: 0.25 } as const;

export const tuningScenes: Record<string, Scene> = {
  beach: {
    ...sun,
    parts: [
      { where: { kind: 'all' }, of: 'sky', level: 0.42, texture: 0.03 },
      { where: { kind: 'below', y: 0.4, rough: 0.002 }, of: 'water', texture: 0.15, level: 1.6 },
      { where: { kind: 'below', y: 0.58, rough: 0.03 }, of: 'sand', texture: 0.08 },
      { where: { kind: 'blob', x: 0.3, y: 0.66, rx: 0.05, ry: 0.16 }, of: 'skin', texture: 0.12, lit: 0.7 },
      { where: { kind: 'blob', x: 0.3, y: 0.69, rx: 0.055, ry: 0.06 }, of: 'strongRed', texture: 0.1 },
      { where: { kind: 'blob', x: 0.34, y: 0.82, rx: 0.12, ry: 0.02 }, of: 'sand', lit: 0, texture: 0.1 },
      {
        where: { kind: 'blob', x: 0.75, y: 0.72, rx: 0.12, ry: 0.12 },
        of: ['white', 'strongYellow'],
        texture: 0.1,
      },
      { where: { kind: 'box', x: 0.7, y: 0.75, w: 0.1, h: 0.14 }, of: 'black', lit: 0.1, texture: 0.2 },
    ],
  },
  street: {
    ...sun,
    parts: [
      { where: { kind: 'all' }, of: 'sky', level: 0.5, texture: 0.1 },
      { where: { kind: 'box', x: 0, y: 0.1, w: 0.4, h: 0.7 }, of: ['brick', 'concrete'], texture: 0.12 },
      {
        where: { kind: 'box', x: 0.6, y: 0.02, w: 0.4, h: 0.75 },
        of: ['brick', 'darkWood'],
        lit: 0.05,
        texture: 0.15,
      },
      { where: { kind: 'patches', share: 0.1, scale: 9 }, of: 'black', lit: 0.1, texture: 0.3 },
      { where: { kind: 'below', y: 0.74, rough: 0.02 }, of: 'road', texture: 0.1 },
      { where: { kind: 'below', y: 0.88, rough: 0.05 }, of: 'road', lit: 0.05, texture: 0.12 },
      { where: { kind: 'blob', x: 0.5, y: 0.75, rx: 0.12, ry: 0.08 }, of: 'bluishGreen', texture: 0.2 },
      { where: { kind: 'blob', x: 0.5, y: 0.82, rx: 0.12, ry: 0.02 }, of: 'black', lit: 0, level: 0.3 },
    ],
  },
  forest: {
    ...sun,
    parts: [
      { where: { kind: 'all' }, of: ['leaf', 'yellowGreen'], texture: 0.3, lit: 0.4 },
      { where: { kind: 'patches', share: 0.35, scale: 7 }, of: 'leaf', lit: 0, texture: 0.35, level: 0.5 },
      { where: { kind: 'patches', share: 0.06, scale: 12 }, of: 'sky', level: 0.5 },
      { where: { kind: 'box', x: 0.2, y: 0, w: 0.09, h: 1 }, of: 'darkWood', texture: 0.25, lit: 0.4 },
      { where: { kind: 'box', x: 0.74, y: 0, w: 0.06, h: 1 }, of: 'wood', texture: 0.3, lit: 0.2 },
      { where: { kind: 'below', y: 0.8, rough: 0.08 }, of: ['soil', 'dryGrass'], texture: 0.2, lit: 0.5 },
    ],
  },
  portrait: {
    ...cloud,
    parts: [
      { where: { kind: 'all' }, of: ['leaf', 'darkGrey'], texture: 0.2, level: 0.7 },
      {
        where: { kind: 'blob', x: 0.5, y: 0.95, rx: 0.32, ry: 0.35 },
        of: ['denim', 'lightBlue'],
        texture: 0.15,
      },
      { where: { kind: 'blob', x: 0.5, y: 0.3, rx: 0.17, ry: 0.25 }, of: 'hair', texture: 0.2 },
      { where: { kind: 'blob', x: 0.5, y: 0.42, rx: 0.13, ry: 0.24 }, of: 'skin', texture: 0.07, lit: 0.9 },
      { where: { kind: 'blob', x: 0.5, y: 0.75, rx: 0.1, ry: 0.1 }, of: 'white', texture: 0.08 },
    ],
  },
  snowSlope: {
    ...sun,
    stops: 0.3,
    parts: [
      { where: { kind: 'all' }, of: 'sky', level: 0.32 },
      { where: { kind: 'below', y: 0.35, rough: 0.1 }, of: 'snow', texture: 0.06, level: 0.9 },
      { where: { kind: 'patches', share: 0.2, scale: 3 }, of: 'snow', lit: 0.1, texture: 0.05, level: 0.9 },
      { where: { kind: 'patches', share: 0.08, scale: 10 }, of: ['leaf', 'black'], lit: 0.2, texture: 0.3 },
      { where: { kind: 'blob', x: 0.6, y: 0.7, rx: 0.04, ry: 0.12 }, of: 'strongBlue', texture: 0.15 },
    ],
  },
  tungstenRoom: {
    ...lamp,
    stops: -0.3,
    parts: [
      { where: { kind: 'all' }, of: ['paper', 'greyishYellow'], texture: 0.25, lit: 0.4, level: 0.7 },
      { where: { kind: 'below', y: 0.7 }, of: 'darkWood', texture: 0.2, lit: 0.5 },
      { where: { kind: 'box', x: 0.05, y: 0.25, w: 0.25, h: 0.5 }, of: 'wood', texture: 0.15, lit: 0.3 },
      {
        where: { kind: 'blob', x: 0.6, y: 0.65, rx: 0.2, ry: 0.3 },
        of: ['strongGreen', 'darkGrey'],
        texture: 0.2,
        lit: 0.5,
      },
      { where: { kind: 'blob', x: 0.6, y: 0.3, rx: 0.09, ry: 0.15 }, of: 'skin', texture: 0.1, lit: 0.8 },
      { where: { kind: 'patches', share: 0.15, scale: 4 }, of: 'black', lit: 0.1, texture: 0.3 },
      { where: { kind: 'blob', x: 0.85, y: 0.15, rx: 0.07, ry: 0.09 }, of: 'white', lit: 1, level: 2.5 },
    ],
  },
  night: {
    directKelvin: 3000,
    ambient: 4200,
    ambientShare: 0.2,
    stops: -1.2,
    parts: [
      { where: { kind: 'all' }, of: 'black', lit: 0.1, texture: 0.4, level: 0.5 },
      { where: { kind: 'below', y: 0.7, rough: 0.03 }, of: 'road', lit: 0.2, texture: 0.3 },
      {
        where: { kind: 'box', x: 0.1, y: 0.3, w: 0.3, h: 0.45 },
        of: ['concrete', 'brick'],
        lit: 0.3,
        texture: 0.3,
      },
      {
        where: { kind: 'patches', share: 0.04, scale: 12 },
        of: ['white', 'orangeCloth'],
        lit: 1,
        level: 3,
        texture: 0.2,
      },
    ],
  },
  garden: {
    ...cloud,
    parts: [
      { where: { kind: 'all' }, of: ['leaf', 'yellowGreen'], texture: 0.22 },
      {
        where: { kind: 'patches', share: 0.12, scale: 9 },
        of: ['strongRed', 'reddishPurple'],
        texture: 0.15,
      },
      { where: { kind: 'patches', share: 0.08, scale: 11 }, of: ['strongYellow', 'white'], texture: 0.12 },
      { where: { kind: 'patches', share: 0.15, scale: 6 }, of: 'black', lit: 0, texture: 0.3 },
      { where: { kind: 'box', x: 0.6, y: 0.3, w: 0.3, h: 0.5 }, of: ['concrete', 'paper'], texture: 0.1 },
    ],
  },
  meadow: {
    ...sun,
    parts: [
      { where: { kind: 'all' }, of: 'sky', level: 0.48, texture: 0.12 },
      { where: { kind: 'below', y: 0.5, rough: 0.06 }, of: 'leaf', texture: 0.18, level: 0.8 },
      { where: { kind: 'below', y: 0.6, rough: 0.03 }, of: ['leaf', 'dryGrass'], texture: 0.15, level: 1.4 },
      { where: { kind: 'blob', x: 0.35, y: 0.66, rx: 0.09, ry: 0.06 }, of: ['white', 'soil'], texture: 0.15 },
      {
        where: { kind: 'blob', x: 0.37, y: 0.73, rx: 0.09, ry: 0.02 },
        of: 'leaf',
        lit: 0,
        texture: 0.2,
        level: 0.6,
      },
    ],
  },
  curtain: {
    ...lamp,
    stops: 0.2,
    parts: [
      { where: { kind: 'all' }, of: 'strongRed', texture: 0.35, lit: 0.6 },
      {
        where: { kind: 'patches', share: 0.12, scale: 5 },
        of: 'strongRed',
        lit: 0.1,
        texture: 0.3,
        level: 0.4,
      },
    ],
  },
  doorway: {
    ...sun,
    stops: -0.5,
    parts: [
      { where: { kind: 'all' }, of: ['paper', 'sand'], texture: 0.08 },
      {
        where: { kind: 'box', x: 0.3, y: 0.1, w: 0.35, h: 0.9 },
        of: 'darkWood',
        lit: 0,
        texture: 0.3,
        level: 0.4,
      },
      {
        where: { kind: 'blob', x: 0.48, y: 0.55, rx: 0.08, ry: 0.35 },
        of: ['white', 'lightViolet'],
        texture: 0.12,
        lit: 0.6,
      },
      { where: { kind: 'patches', share: 0.1, scale: 8 }, of: 'leaf', texture: 0.3, lit: 0.3 },
    ],
  },
};

export const asideScenes: Record<string, Scene> = {
  harbour: {
    ...sun,
    parts: [
      { where: { kind: 'all' }, of: 'sky', level: 0.4, texture: 0.15 },
      { where: { kind: 'below', y: 0.45 }, of: ['water', 'bluishGreen'], texture: 0.25, level: 0.7 },
      {
        where: { kind: 'blob', x: 0.35, y: 0.55, rx: 0.25, ry: 0.1, rough: 0.05 },
        of: ['white', 'rust'],
        texture: 0.12,
      },
      {
        where: { kind: 'blob', x: 0.75, y: 0.6, rx: 0.18, ry: 0.09 },
        of: ['strongBlue', 'wood'],
        texture: 0.18,
      },
      {
        where: { kind: 'blob', x: 0.4, y: 0.68, rx: 0.3, ry: 0.05 },
        of: 'water',
        lit: 0,
        texture: 0.3,
        level: 0.5,
      },
      { where: { kind: 'below', y: 0.85, rough: 0.02 }, of: ['concrete', 'darkGrey'], texture: 0.15 },
      { where: { kind: 'box', x: 0.1, y: 0.2, w: 0.015, h: 0.5 }, of: 'darkWood', texture: 0.1, lit: 0.5 },
    ],
  },
  marketStalls: {
    ...cloud,
    directKelvin: 5600,
    parts: [
      { where: { kind: 'all' }, of: ['concrete', 'brick'], texture: 0.15 },
      {
        where: { kind: 'below', y: 0.5, rough: 0.05 },
        of: ['orangeCloth', 'strongGreen'],
        texture: 0.25,
        lit: 0.7,
      },
      { where: { kind: 'patches', share: 0.15, scale: 8 }, of: ['strongYellow', 'strongRed'], texture: 0.15 },
      { where: { kind: 'patches', share: 0.15, scale: 6 }, of: ['darkSkin', 'skin'], texture: 0.12 },
      { where: { kind: 'patches', share: 0.12, scale: 7 }, of: ['white', 'paper'], texture: 0.1, lit: 0.8 },
      { where: { kind: 'patches', share: 0.14, scale: 7 }, of: 'black', lit: 0, texture: 0.3, level: 0.4 },
    ],
  },
  workshop: {
    directKelvin: 3400,
    ambient: 'haze',
    ambientShare: 0.35,
    stops: -0.4,
    parts: [
      { where: { kind: 'all' }, of: ['wood', 'concrete'], texture: 0.3, lit: 0.3 },
      { where: { kind: 'box', x: 0.62, y: 0.08, w: 0.25, h: 0.3 }, of: 'sky', level: 0.9 },
      { where: { kind: 'below', y: 0.65 }, of: ['darkWood', 'rust'], texture: 0.25, lit: 0.5 },
      { where: { kind: 'patches', share: 0.2, scale: 9 }, of: 'black', lit: 0.1, texture: 0.3, level: 0.5 },
      { where: { kind: 'blob', x: 0.35, y: 0.6, rx: 0.13, ry: 0.35 }, of: 'denim', texture: 0.2, lit: 0.6 },
      { where: { kind: 'blob', x: 0.36, y: 0.24, rx: 0.06, ry: 0.1 }, of: 'skin', texture: 0.12, lit: 0.7 },
    ],
  },
  sunset: {
    directKelvin: 2700,
    ambient: 'sky',
    ambientShare: 0.2,
    stops: -0.6,
    parts: [
      { where: { kind: 'all' }, of: ['orangeCloth', 'lightViolet'], texture: 0.1, level: 0.9 },
      { where: { kind: 'blob', x: 0.6, y: 0.4, rx: 0.06, ry: 0.08 }, of: 'white', level: 6 },
      { where: { kind: 'below', y: 0.55 }, of: 'water', texture: 0.3, level: 2 },
      { where: { kind: 'below', y: 0.75, rough: 0.1 }, of: 'soil', lit: 0, texture: 0.3, level: 0.5 },
    ],
  },
  stage: {
    directKelvin: 3200,
    ambient: 9000,
    ambientShare: 0.1,
    stops: -0.3,
    parts: [
      { where: { kind: 'all' }, of: 'black', texture: 0.3, level: 0.4 },
      {
        where: { kind: 'blob', x: 0.3, y: 0.5, rx: 0.3, ry: 0.5, rough: 0.03 },
        of: ['reddishPurple', 'strongBlue'],
        texture: 0.2,
        lit: 0.6,
      },
      { where: { kind: 'blob', x: 0.65, y: 0.65, rx: 0.1, ry: 0.3 }, of: 'orangeCloth', texture: 0.15 },
      { where: { kind: 'blob', x: 0.65, y: 0.32, rx: 0.05, ry: 0.08 }, of: 'skin', texture: 0.1 },
      { where: { kind: 'below', y: 0.85 }, of: 'wood', texture: 0.15, lit: 0.7 },
    ],
  },
  fog: {
    directKelvin: 6500,
    ambient: 'haze',
    ambientShare: 0.9,
    stops: 0.4,
    parts: [
      { where: { kind: 'all' }, of: ['paper', 'white'], texture: 0.04, level: 0.6 },
      { where: { kind: 'below', y: 0.6, rough: 0.15 }, of: ['grey', 'dryGrass'], texture: 0.06 },
      { where: { kind: 'box', x: 0.45, y: 0.3, w: 0.03, h: 0.45 }, of: 'darkGrey', texture: 0.1 },
    ],
  },
  autumnWood: {
    ...sun,
    directKelvin: 4800,
    parts: [
      { where: { kind: 'all' }, of: ['autumnLeaf', 'strongYellow'], texture: 0.28, lit: 0.6 },
      {
        where: { kind: 'patches', share: 0.3, scale: 8 },
        of: 'darkWood',
        lit: 0.05,
        texture: 0.3,
        level: 0.6,
      },
      { where: { kind: 'patches', share: 0.1, scale: 9 }, of: 'sky', level: 0.5 },
      { where: { kind: 'below', y: 0.75, rough: 0.06 }, of: ['soil', 'autumnLeaf'], texture: 0.2, lit: 0.6 },
    ],
  },
  tableTop: {
    ...cloud,
    parts: [
      { where: { kind: 'all' }, of: 'wood', texture: 0.12 },
      { where: { kind: 'blob', x: 0.3, y: 0.4, rx: 0.2, ry: 0.25 }, of: 'white', texture: 0.06 },
      {
        where: { kind: 'blob', x: 0.3, y: 0.4, rx: 0.1, ry: 0.12 },
        of: ['orangeCloth', 'strongRed'],
        texture: 0.15,
      },
      { where: { kind: 'box', x: 0.6, y: 0.2, w: 0.25, h: 0.4 }, of: 'lightBlue', texture: 0.08 },
      { where: { kind: 'blob', x: 0.7, y: 0.75, rx: 0.12, ry: 0.1 }, of: 'black', texture: 0.3, lit: 0.3 },
      {
        where: { kind: 'blob', x: 0.45, y: 0.62, rx: 0.2, ry: 0.05 },
        of: 'wood',
        lit: 0,
        texture: 0.1,
        level: 0.6,
      },
    ],
  },
  leafCloseUp: {
    ...sun,
    parts: [
      { where: { kind: 'all' }, of: ['strongGreen', 'leaf'], texture: 0.3, lit: 0.7 },
      { where: { kind: 'patches', share: 0.2, scale: 4 }, of: 'leaf', lit: 0.05, texture: 0.3, level: 0.5 },
    ],
  },
  pool: {
    ...sun,
    stops: 0.2,
    parts: [
      { where: { kind: 'all' }, of: ['tile', 'water'], texture: 0.12 },
      { where: { kind: 'blob', x: 0.5, y: 0.5, rx: 0.12, ry: 0.1 }, of: 'skin', texture: 0.12 },
      { where: { kind: 'above', y: 0.15, rough: 0.02 }, of: 'concrete', texture: 0.1 },
      { where: { kind: 'patches', share: 0.06, scale: 14 }, of: 'white', level: 1.3 },
    ],
  },
  classroom: {
    directKelvin: 4200,
    ambient: 4000,
    ambientShare: 0.5,
    parts: [
      { where: { kind: 'all' }, of: ['paper', 'lightBlue'], texture: 0.12, level: 0.8 },
      { where: { kind: 'box', x: 0.2, y: 0.12, w: 0.6, h: 0.3 }, of: 'darkGrey', texture: 0.1 },
      { where: { kind: 'below', y: 0.6, rough: 0.04 }, of: ['wood', 'denim'], texture: 0.25, lit: 0.5 },
      { where: { kind: 'patches', share: 0.15, scale: 7 }, of: ['skin', 'hair'], texture: 0.12 },
      { where: { kind: 'patches', share: 0.1, scale: 6 }, of: 'black', lit: 0, texture: 0.3, level: 0.5 },
    ],
  },
};
