import { percentile } from '../maths/percentile.js';
import type { Blocks } from './blocks.js';
import { clearOfEnds, plainMeans } from './blocks.js';
import type { TileCount } from './texture.js';

/** Why a verdict is worth less than usual. The words are for people. */
export const doubts = {
  'few-colours': 'the frame has nearly one colour, and many causes would leave that alike',
  'few-places': 'little of the frame lies clear of black and white',
  moved: 'a part of the frame is not the same in both stills: something moved, or the film did',
  'no-texture': 'the frame has too little texture to find a shift, or to be sure that both stills show it',
  'weak-look': 'the look hardly changes this frame: whether it was applied at all can hardly be told',
} as const satisfies Record<string, string>;

export type Doubt = keyof typeof doubts;

/** Codes of 255 that the blocks must span, in one channel at least, before causes are told apart. */
const leastSpan = 20;
/** Blocks clear of the ends that are enough. */
const leastClear = 24;
/** Tiles with texture that tell one frame from another. */
export const leastTextured = 4;
/** Share of such tiles that must be alike. */
const mostMoved = 0.1;
/** Mean CIEDE2000 between the plain still and the look's own doing. */
const weakLook = 0.3;

/** Lowest to highest level of a run of r g b, the outer 2 % left out, in the channel that spans most; codes of 255. */
function spanOf(colours: Float64Array): number {
  return Math.max(
    ...[0, 1, 2].map((c) => {
      const levels = colours.filter((_, i) => i % 3 === c);
      return 255 * (percentile(levels, 0.98) - percentile(levels, 0.02));
    }),
  );
}

/** What speaks against being sure. @param lookChanges mean CIEDE2000 that the look should make on this frame */
export function findDoubts(blocks: Blocks, { textured, alike }: TileCount, lookChanges: number): Doubt[] {
  const colours = plainMeans(blocks);
  const clear = clearOfEnds(colours).filter(Boolean).length;
  const found: Record<Doubt, boolean> = {
    'few-colours': spanOf(colours) < leastSpan,
    'few-places': clear < leastClear,
    'no-texture': textured < leastTextured,
    moved: textured >= leastTextured && alike < (1 - mostMoved) * textured,
    'weak-look': lookChanges < weakLook,
  };
  return (Object.keys(doubts) as Doubt[]).filter((doubt) => found[doubt]);
}

/** Doubts with which no cause is named: it would be a guess. */
export const causeIsAGuess = (found: readonly Doubt[]): boolean =>
  found.includes('few-colours') || found.includes('few-places');
