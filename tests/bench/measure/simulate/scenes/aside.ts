import { cloud, sun, type Scene } from './scene.js';

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
