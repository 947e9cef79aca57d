import { percentile } from '../maths/percentile.js';
import type { Triple } from '../maths/matrix3.js';
import { levelsOf } from '../picture/level-counts.js';
import type { LitStill } from './still-light.js';

/** Sides of a block in pixels, and of the quarters of its sides that its flatness is judged by. */
const side = 16;
const part = 4;

/** A block by its top left pixel. */
export interface Block {
  readonly x: number;
  readonly y: number;
}

/** What one channel of a block holds. */
interface BlockFigures {
  readonly mean: number;
  /** Deviation of the pixels from a tilted plane through the block, linear light. */
  readonly noise: number;
  /** Deviation of the means of its 4 x 4 parts from that plane: drawing, where it is more than noise averaged. */
  readonly drawing: number;
}

const offsets = Float64Array.from({ length: side }, (_, i) => i - (side - 1) / 2);
const squares = offsets.reduce((sum, o) => sum + o * o, 0) * side;

/** The pixels of a block less the plane fitted to them by least squares, and their mean. */
function flattened(
  { picture, light }: LitStill,
  { x, y }: Block,
  channel: number,
  out: Float64Array,
): number {
  let [sum, slopeX, slopeY] = [0, 0, 0];
  for (let row = 0; row < side; row++)
    for (let column = 0; column < side; column++) {
      const at = ((y + row) * picture.width + x + column) * picture.channels + channel;
      const value = light[picture.data[at]];
      out[row * side + column] = value;
      sum += value;
      slopeX += value * offsets[column];
      slopeY += value * offsets[row];
    }
  const mean = sum / (side * side);
  for (let i = 0; i < out.length; i++)
    out[i] -=
      mean + (slopeX / squares) * offsets[i % side] + (slopeY / squares) * offsets[Math.floor(i / side)];
  return mean;
}

function figuresOf(still: LitStill, block: Block, channel: number, rest: Float64Array): BlockFigures {
  const mean = flattened(still, block, channel, rest);
  const parts = new Float64Array((side / part) ** 2);
  let squared = 0;
  for (let i = 0; i < rest.length; i++) {
    squared += rest[i] * rest[i];
    const [row, column] = [Math.floor(i / side), i % side];
    parts[Math.floor(row / part) * (side / part) + Math.floor(column / part)] += rest[i] / (part * part);
  }
  const planeFreedom = 3;
  return {
    mean,
    noise: Math.sqrt(squared / (rest.length - planeFreedom)),
    drawing: Math.sqrt(parts.reduce((sum, value) => sum + value * value, 0) / parts.length),
  };
}

/** Of the blocks by their light, those between these shares are the shadows; the darkest few may be dust or a mask. */
const shadows = { from: 0.02, to: 0.3 } as const;

/** Of the shadows, the flattest share; the rest may hold drawing. */
const flattest = 0.25;
const fewestBlocks = 4;

/**
 * Flat places in the shadows of a still: there what varies from pixel to pixel is noise and grain.
 * @returns none for a picture of fewer than four blocks of 16 x 16 pixels, or without light in its shadows
 */
export function flatShadows(still: LitStill): Block[] {
  const { width, height } = still.picture;
  const rest = new Float64Array(side * side);
  const blocks: (Block & BlockFigures)[] = [];
  for (let y = 0; y + side <= height; y += side)
    for (let x = 0; x + side <= width; x += side)
      blocks.push({ x, y, ...figuresOf(still, { x, y }, 1, rest) });
  blocks.sort((a, b) => a.mean - b.mean);
  const to = Math.max(fewestBlocks, Math.ceil(shadows.to * blocks.length));
  const dark = blocks.slice(Math.floor(shadows.from * blocks.length), to).filter(({ mean }) => mean > 0);
  dark.sort((a, b) => a.drawing / a.mean - b.drawing / b.mean);
  const chosen = dark.slice(0, Math.max(fewestBlocks, Math.ceil(flattest * dark.length)));
  return chosen.length < fewestBlocks ? [] : chosen.map(({ x, y }) => ({ x, y }));
}

/** Pixels at either end above this share cut the noise off: it would be read too low. */
const endedAllowed = 0.02;

function endedShare(still: LitStill, blocks: readonly Block[], channel: number): number {
  const { picture, blackLevel, whiteLevel } = still;
  const shift = levelsOf(picture) === 256 ? 0 : 6;
  let ended = 0;
  for (const { x, y } of blocks)
    for (let i = 0; i < side * side; i++) {
      const pixel = (y + Math.floor(i / side)) * picture.width + x + (i % side);
      const level = picture.data[pixel * picture.channels + channel] >> shift;
      if (level <= blackLevel || level >= whiteLevel) ended++;
    }
  return ended / (blocks.length * side * side);
}

/**
 * Noise of red, green, blue in such places: deviation as a per cent of the light there, the median over the places.
 * Camera noise and film grain together; comparing stills of one frame, the grain is the same in each.
 * @returns undefined where there are no such places, or they are blocked or burnt out in this still
 */
export function shadowNoise(still: LitStill, blocks: readonly Block[]): Triple | undefined {
  if (blocks.length === 0) return undefined;
  const rest = new Float64Array(side * side);
  const percentOf = (channel: number): number => {
    if (endedShare(still, blocks, channel) > endedAllowed) return NaN;
    const shares = blocks.map((block) => {
      const { mean, noise } = figuresOf(still, block, channel, rest);
      return noise / mean;
    });
    return 100 * percentile(Float64Array.from(shares), 0.5);
  };
  const percents: Triple = [percentOf(0), percentOf(1), percentOf(2)];
  return percents.every(Number.isFinite) ? percents : undefined;
}
