import { normalRandom, seededRandom } from '../../../src/maths/random.js';

/** What runs through the gate. */
export interface Film {
  readonly kind: 'leader' | 'street' | 'pan';
  readonly seed: number;
  /** Film frames between cuts; 0 = none. Every other one is a dissolve of 16 frames. */
  readonly framesAScene?: number;
  /** Deviation of the picture's place from frame to frame, pixels. */
  readonly weave?: number;
  /** Deviation of the film's own exposure from frame to frame. */
  readonly uneven?: number;
  readonly grain?: number;
  /** The frame line is lost by `share` of the height from film frame `frame` on; the gate shows the line. */
  readonly jumps?: readonly { readonly frame: number; readonly share: number }[];
}

export const width = 96;
export const height = 72;

/** Film frames are so much higher than the picture: the frame line, outside of the gate unless a loop is lost. */
const pitch = Math.round(height * 1.08);

type Sampler = (x: number, y: number) => number;

/** Smooth random values that repeat after `size` pixels. */
function field(random: () => number, size: number, cell: number): Sampler {
  const cells = Math.round(size / cell);
  const values = Float64Array.from({ length: cells * cells }, random);
  return (x, y) => {
    const [cx, cy] = [x / cell, y / cell];
    const [ix, iy] = [Math.floor(cx), Math.floor(cy)];
    const [fx, fy] = [cx - ix, cy - iy];
    const at = (i: number, j: number) =>
      values[(((j % cells) + cells) % cells) * cells + (((i % cells) + cells) % cells)];
    const [a, b] = [at(ix, iy), at(ix + 1, iy)];
    const [c, d] = [at(ix, iy + 1), at(ix + 1, iy + 1)];
    const top = a + fx * (b - a);
    return top + fy * (c + fx * (d - c) - top);
  };
}

interface Scene {
  readonly ground: Sampler;
  readonly walkers: readonly { x: number; y: number; dx: number; size: number; light: number }[];
  readonly pan: number;
}

function sceneOf(kind: Film['kind'], seed: number): Scene {
  const random = seededRandom(seed);
  if (kind === 'leader') {
    const shade = field(random, 192, 48);
    return { ground: (x, y) => 0.6 + 0.06 * shade(x, y), walkers: [], pan: 0 };
  }
  const [coarse, middle, fine] = [32, 8, 3].map((cell) => field(random, 192, cell));
  const level = 0.18 + 0.2 * random();
  const ground: Sampler = (x, y) =>
    level * (0.25 + 1.2 * coarse(x, y)) * (0.5 + middle(x, y)) * (0.75 + 0.5 * fine(x, y));
  const walkers = Array.from({ length: 5 }, () => ({
    x: width * random(),
    y: height * (0.3 + 0.6 * random()),
    dx: 3 * (random() - 0.5),
    size: 4 + 9 * random(),
    light: 0.05 + 0.5 * random(),
  }));
  return { ground, walkers, pan: kind === 'pan' ? 0.4 + 1.2 * random() : 0 };
}

function drawScene({ ground, walkers, pan }: Scene, frame: number, dx: number, dy: number): Float32Array {
  const out = new Float32Array(width * pitch);
  for (let y = 0, i = 0; y < pitch; y++)
    for (let x = 0; x < width; x++, i++) out[i] = ground(x + dx + pan * frame, y + dy);
  for (const { x, y, dx: speed, size, light } of walkers) {
    const cx = ((((x + speed * frame) % 130) + 130) % 130) - 17 + dx;
    const cy = y + dy + 1.5 * Math.sin(frame / 4 + x);
    for (let py = Math.max(0, Math.floor(cy - size)); py < Math.min(pitch, cy + size); py++)
      for (let px = Math.max(0, Math.floor(cx - size)); px < Math.min(width, cx + size); px++) {
        const cover = Math.min(1, Math.max(0, size - Math.hypot(px - cx, py - cy)));
        const at = py * width + px;
        out[at] += cover * (light * (0.7 + 0.3 * Math.sin(px - cx) * Math.cos(py - cy)) - out[at]);
      }
  }
  return out;
}

const dissolveFrames = 16;

/** Film frames as they lie in the gate, linear light with the open gate at 1. */
export function filmFrames(film: Film): (frame: number) => Float32Array {
  const { kind, seed, framesAScene = 0, weave = 0.25, uneven = 0, grain = 0.02, jumps = [] } = film;
  const scenes = new Map<number, Scene>();
  const scene = (index: number) => {
    if (!scenes.has(index)) scenes.set(index, sceneOf(kind, 1000 * seed + index));
    return scenes.get(index)!;
  };
  const draw = (frame: number): Float32Array => {
    const random = seededRandom(77 * seed + frame);
    const [dx, dy] = [weave * normalRandom(random), weave * normalRandom(random)];
    const index = framesAScene === 0 ? 0 : Math.floor(frame / framesAScene);
    const picture = drawScene(scene(index), frame, dx, dy);
    const left = (index + 1) * framesAScene - frame;
    if (framesAScene > 0 && index % 2 === 0 && left <= dissolveFrames) {
      const next = drawScene(scene(index + 1), frame, dx, dy);
      const share = 1 - left / dissolveFrames;
      for (let i = 0; i < picture.length; i++) picture[i] += share * (next[i] - picture[i]);
    }
    const exposure = 1 + uneven * normalRandom(random);
    for (let i = 0; i < picture.length; i++) picture[i] *= exposure * (1 + grain * normalRandom(random));
    if (kind === 'leader')
      for (let speck = 0; speck < 3; speck++) picture[Math.floor(random() * picture.length)] *= 0.3;
    picture.fill(0.002, width * height); // the frame line
    return inGate(picture, frame, jumps);
  };
  const kept = new Map<number, Float32Array>();
  return (frame) => {
    if (!kept.has(frame)) {
      if (kept.size > 4) kept.delete([...kept.keys()][0]);
      kept.set(frame, draw(frame));
    }
    return kept.get(frame)!;
  };
}

function inGate(picture: Float32Array, frame: number, jumps: Film['jumps'] = []): Float32Array {
  const share = jumps.reduce((sum, jump) => (frame >= jump.frame ? sum + jump.share : sum), 0);
  const shift = ((Math.round(share * height) % pitch) + pitch) % pitch;
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const from = ((y + shift) % pitch) * width;
    out.set(picture.subarray(from, from + width), y * width);
  }
  return out;
}
