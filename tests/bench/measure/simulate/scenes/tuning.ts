import { cloud, lamp, sun, type Scene } from './scene.js';

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
