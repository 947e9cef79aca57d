import { describe, expect, it } from 'vitest';
import { loadLines } from '../../../src/cli/engine/load-engine.js';
import type { MatrixName } from '../../../src/colour/luma-chroma.js';
import type { SignalRange } from '../../../src/colour/signal-range.js';
import { seededRandom } from '../../../src/maths/random.js';
import { instantiate, sharedMemory } from '../../../src/maths/web-assembly.js';
import { type FrameWay, frameThrough, frameWorkBytes } from '../../../src/picture/lines/frame-through.js';
import type { LineModule } from '../../../src/picture/lines/line-module.js';
import { type Flip, flipPicture } from '../../../src/picture/orientation.js';
import { makePicture } from '../../../src/picture/picture.js';
import { type FrameCoding, frameToRgb, rgbToFrame } from '../../../src/picture/planar-codec.js';
import { planeBytes, type PlaneLayout, planesOf } from '../../../src/picture/planes.js';

const seed = 19520613;

/** Floats of 32 bits round a code now and then to the other side than doubles do: one code, and seldom. */
const roundedOtherwise = { most: 1, share: 0.02 };

const module = instantiateLines();

function instantiateLines() {
  const memory = sharedMemory();
  memory.grow(63);
  const compiled = loadLines();
  if (compiled === undefined) throw new Error('dist/plane-lines.wasm is missing: npm run build');
  return { memory, lines: instantiate<LineModule>(compiled, memory) };
}

/** Something done to colours that moves each channel otherwise and can be done again in the test. */
const work = (codes: Uint16Array, to: Uint16Array) =>
  codes.forEach((code, i) => (to[i] = [code, 65535 - code, code >> 1][i % 3]));

/** @returns the frame through the loops, and the pixels that were handed over on the way */
function quickly(way: FrameWay, frame: Uint8Array): { planes: Uint8Array; rgb: Uint16Array } {
  const { width, height } = way.from.layout;
  const buffer = module.memory.buffer;
  const rgb = new Uint16Array(3 * width * height);
  const start = 65536;
  const source = start + 16 * Math.ceil(frameWorkBytes(module.lines, way) / 16);
  const target = source + 16 * Math.ceil(frame.length / 16) + 256;
  const size = planeBytes(way.to.layout);
  const behind = new Uint8Array(buffer, target + size, 16).fill(123);
  new Uint8Array(buffer, source, frame.length).set(frame);
  let y = 0;
  frameThrough({ module: module.lines, buffer, start }, way, (from, to) => {
    const line = new Uint16Array(buffer, from, 3 * width);
    rgb.set(line, 3 * width * y++);
    work(line, new Uint16Array(buffer, to, 3 * width));
  })(source, target);
  expect([...behind], 'nothing behind the frame is written').toEqual(new Array(16).fill(123));
  return { planes: new Uint8Array(buffer, target, size).slice(), rgb };
}

function plainRgb({ from, takes, flip }: FrameWay, frame: Uint8Array): Uint16Array {
  const { width, height } = from.layout;
  const picture = makePicture(width, height, { channels: 3, bits: 16 });
  frameToRgb(from, frame, picture.data as Uint16Array, takes);
  return (flip === undefined ? picture : flipPicture(picture, flip)).data as Uint16Array;
}

function expectAlmostSame(ours: ArrayLike<number>, plain: ArrayLike<number>, what: string): void {
  let other = 0;
  for (let i = 0; i < plain.length; i++) {
    const apart = Math.abs(ours[i] - plain[i]);
    if (!(apart <= roundedOtherwise.most))
      expect(apart, `${what}, code ${i}`).toBeLessThanOrEqual(roundedOtherwise.most);
    if (apart > 0) other++;
  }
  expect(other, what).toBeLessThanOrEqual(Math.max(2, roundedOtherwise.share * plain.length));
}

describe('frames line by line through the compiled loops', () => {
  const random = seededRandom(seed);
  const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)];
  const sizes = [1, 2, 3, 4, 5, 7, 8, 9, 15, 16, 17, 31, 33, 47, 64, 65];
  const layout = (size: Pick<PlaneLayout, 'width' | 'height'>, kinds: PlaneLayout['kind'][]) => ({
    ...{ ...size, kind: one(kinds), bits: one([8, 9, 10, 12, 14, 16]) },
    ...{ across: one([1, 2] as const), down: one([1, 2] as const) },
    ...{ siteAcross: one(['first', 'midway'] as const), siteDown: one(['first', 'midway'] as const) },
  });
  const coding = (
    size: Pick<PlaneLayout, 'width' | 'height'>,
    kinds: PlaneLayout['kind'][],
  ): FrameCoding => ({
    layout: layout(size, kinds),
    matrix: one<MatrixName>(['bt601', 'bt709', 'bt2020']),
    range: one<SignalRange>(['full', 'legal']),
  });
  const ways = Array.from({ length: 200 }, (): FrameWay => {
    const size = { width: one(sizes), height: one(sizes) };
    return {
      from: coding(size, ['luma-chroma', 'luma-chroma', 'rgb', 'grey']),
      to: coding(size, ['luma-chroma', 'luma-chroma', 'rgb']),
      takes: one<SignalRange>(['full', 'legal']),
      gives: one<SignalRange>(['full', 'legal']),
      flip: one<Flip | undefined>([undefined, 'h', 'v', 'hv']),
    };
  });

  it.each(ways)('give what plain code gives: %j', (way) => {
    const frame = new Uint8Array(planeBytes(way.from.layout));
    const most = 2 ** way.from.layout.bits;
    for (const plane of planesOf(way.from.layout, frame))
      plane.forEach((_, i) => (plane[i] = Math.floor(most * random())));
    const { planes, rgb } = quickly(way, frame);
    expectAlmostSame(rgb, plainRgb(way, frame), 'red, green and blue');
    const worked = new Uint16Array(rgb.length);
    work(rgb, worked);
    const plain = new Uint8Array(planes.length);
    rgbToFrame(way.to, worked, plain, way.gives);
    planesOf(way.to.layout, planes).forEach((plane, i) =>
      expectAlmostSame(plane, planesOf(way.to.layout, plain)[i], `plane ${i}`),
    );
  });
});
