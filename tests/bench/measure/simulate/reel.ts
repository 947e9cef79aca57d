import { seededRandom } from '../../../../src/maths/random.js';
import type { Triple } from '../../../../src/maths/matrix3.js';
import { bellCamera, cameraOf, rippledCamera } from './cameras.js';
import { betweenOf, type Between } from './grid.js';
import { asideLights, tuningLights } from './lights.js';
import { paint } from './paint.js';
import { develop, edgeMarks, scan, write, type Fade, type Scanner } from './scan.js';
import { asideScenes } from './scenes/aside.js';
import type { Scene } from './scenes/scene.js';
import { tuningScenes } from './scenes/tuning.js';
import { asideStock, tuningStock } from './stocks.js';

export interface Frame {
  readonly name: string;
  readonly picture: {
    width: number;
    height: number;
    channels: 3;
    bits: 8 | 16;
    data: Uint8Array | Uint16Array;
  };
  /** Code values 0..1 of the same frame before it faded, through the same camera, without noise. */
  readonly truth: Float32Array;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export interface Reel {
  readonly name: string;
  readonly fade: FadeKind;
  readonly encoding: Encoding;
  /** Frames given without marks; any number from the first on. */
  readonly given: readonly Frame[];
  /** Frames of the reel that are never given. */
  readonly others: readonly Frame[];
  /** A frame with film edge and a grey card, with rectangles in pixels. */
  readonly marked: { readonly frame: Frame; readonly black: Box; readonly clear: Box; readonly neutral: Box };
}

const encodings = {
  srgb: (x: number) => (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055),
  bt709: (x: number) => (x < 0.018 ? 4.5 * x : 1.099 * x ** 0.45 - 0.099),
};
export type Encoding = keyof typeof encodings;

/** Least and greatest loss of cyan, magenta, yellow. */
const fades = {
  good: [0, 0, 0, 0, 0, 0],
  cyan: [0.35, 0.68, 0, 0.1, 0.05, 0.25],
  yellow: [0, 0.12, 0, 0.1, 0.35, 0.65],
  magenta: [0.05, 0.15, 0.3, 0.6, 0, 0.15],
  mixed: [0.3, 0.6, 0.08, 0.3, 0.25, 0.55],
  mild: [0.06, 0.22, 0, 0.1, 0.03, 0.2],
} as const;
export type FadeKind = keyof typeof fades;
export const fadeKinds = Object.keys(fades) as FadeKind[];

function fadeOf(kind: FadeKind, between: Between): Fade {
  const f = fades[kind];
  const loss: Triple = [between(f[0], f[1]), between(f[2], f[3]), between(f[4], f[5])];
  if (kind === 'good') return { loss, stain: 0, leaning: 0 };
  return {
    loss,
    stain: kind === 'mild' ? between(0, 0.04) : between(0, 0.12),
    leaning: kind === 'magenta' ? 0.15 : 0,
  };
}

function scannerOf(between: Between, aside: boolean): Scanner {
  const kinds = Object.values(aside ? asideLights : tuningLights);
  const light = kinds[Math.floor(between(0, kinds.length))](between);
  return {
    ...cameraOf((aside ? rippledCamera : bellCamera)(between), light),
    gains: [10 ** between(-0.035, 0.035), 1, 10 ** between(-0.035, 0.035)],
    openGate: between(0.72, 1.02),
    flare: between(0.0005, 0.003),
    veil: between(0.0005, 0.004),
    readNoise: between(0.0002, 0.0006),
    shotNoise: between(0.0015, 0.004),
  };
}

const greyCard = { x: 0.56, y: 0.72, w: 0.16, h: 0.16 };
const withCard = (scene: Scene): Scene => ({
  ...scene,
  parts: [...scene.parts, { where: { kind: 'box', ...greyCard }, of: 'grey', texture: 0.03 }],
});
/** Scenes in which nobody would look for a grey. */
const unfitForMarks = ['curtain', 'night', 'tungstenRoom', 'sunset', 'stage', 'leafCloseUp', 'workshop'];

export interface Size {
  readonly width: number;
  readonly height: number;
}

const inside = (box: Box, { width, height }: Size): Box => ({
  x: Math.round(width * box.x),
  y: Math.round(height * box.y),
  w: Math.round(width * box.w),
  h: Math.round(height * box.h),
});
const shrunk = ({ x, y, w, h }: Box): Box => ({ x: x + 0.15 * w, y: y + 0.15 * h, w: 0.7 * w, h: 0.7 * h });

/** One reel of the tuning or the kept-aside world. */
export function simulateReel(
  seed: number,
  kind: FadeKind,
  aside: boolean,
  size: Size,
  counts = { given: 4, others: 3 },
): Reel {
  const random = seededRandom(seed);
  const between = betweenOf(random);
  const stock = (aside ? asideStock : tuningStock)(between);
  const scanner = scannerOf(between, aside);
  const fade = fadeOf(kind, between);
  const [bits, encoding] = [random() < 0.6 ? 8 : 16, random() < 0.5 ? 'srgb' : 'bt709'] as const;
  const encode = encodings[encoding];
  const scenes = aside ? asideScenes : tuningScenes;
  const names = Object.keys(scenes);
  const edge = random() < 0.35;
  const balancedLamp = random() < 0.6;

  const frame = (sceneName: string, withEdge: boolean, card: boolean): Frame => {
    const scene = card ? withCard(scenes[sceneName]) : scenes[sceneName];
    const frameSeed = Math.floor(random() * 1e9);
    const balanced = scene.directKelvin < 3600 && balancedLamp;
    const stops = 0.4 * (random() + random() + random() - 1.5) * 2 - (random() < 0.08 ? 1 : 0);
    const painting = paint(scene, stock, size, {
      seed: frameSeed,
      balanced,
      stops: card ? stops / 2 : stops,
    });
    const film = develop(painting, stock, { seed: frameSeed + 1, edge: withEdge, grain: 0.025 });
    const faded = scan(film, stock, fade, scanner);
    const whole = scan(film, stock, { loss: [0, 0, 0], stain: 0, leaning: 0 }, scanner);
    return {
      name: sceneName,
      picture: {
        ...size,
        channels: 3,
        bits,
        data: write(faded, scanner, { bits, encode, seed: frameSeed + 2 }),
      },
      truth: Float32Array.from(whole, (light) => encode(Math.min(1, Math.max(0, light)))),
    };
  };
  const pick = (from: readonly string[]) => from[Math.floor(random() * from.length)];
  const shuffled = [...names].sort(() => random() - 0.5);
  const frames = Array.from({ length: counts.given + counts.others }, (_, i) =>
    frame(shuffled[i % shuffled.length], edge, false),
  );
  return {
    name: `${aside ? 'aside' : 'tuning'} ${seed} ${kind} ${encoding} ${bits} bit${edge ? ' edge' : ''}`,
    fade: kind,
    encoding,
    given: frames.slice(0, counts.given),
    others: frames.slice(counts.given),
    marked: {
      frame: frame(pick(names.filter((name) => !unfitForMarks.includes(name))), true, true),
      black: inside(edgeMarks.black, size),
      clear: inside(edgeMarks.clear, size),
      neutral: inside(shrunk(greyCard), size),
    },
  };
}
