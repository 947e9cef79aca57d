import type { LightFrame } from './light-frame.js';

/** A sudden move of the picture up or down: a splice, or a lost loop. */
export interface FrameLineJump {
  /** The first frame that shows it. */
  readonly frame: number;
  /** Share of the picture's height, downwards positive; NaN when the line came into or went out of view. */
  readonly share: number;
}

/** What one frame says of where the film stands, and how far it moved since the one before. */
export interface LineSight {
  /** Middle of the dark line across the picture, a share of its height; NaN when none is in view. */
  readonly line: number;
  /** Share of the height by which the picture moved; 0 when nothing is sure. */
  readonly move: number;
}

/** A line is this dark against the picture, this thin, and so far inside that the gate's edge cannot be meant. */
const darkShare = 0.3;
const thickest = 0.15;
const inside = 0.04;

/** Upright strips whose rows are compared each for itself: two scenes seldom agree in all of them. */
const strips = 4;

/** The lightest fifth of each row; and the mean light of each row of each strip, about that of the frame, row by row. */
function rowsOf({ width, height, light }: LightFrame): { bright: Float64Array; means: Float64Array } {
  const bright = new Float64Array(height);
  const means = new Float64Array(strips * height);
  const mean = Math.max(1e-9, light.reduce((sum, value) => sum + value, 0) / light.length);
  for (let y = 0; y < height; y++) {
    const row = light.slice(y * width, (y + 1) * width);
    for (let x = 0; x < width; x++)
      means[y * strips + Math.floor((strips * x) / width)] += (strips * row[x]) / (width * mean);
    bright[y] = row.sort()[Math.floor(0.8 * width)];
  }
  return { bright, means };
}

function lineIn(bright: Float64Array): number {
  const height = bright.length;
  const limit = darkShare * bright.slice().sort()[height >> 1];
  let [start, found] = [-1, NaN];
  for (let y = 0; y <= height; y++) {
    const dark = y < height && bright[y] < limit;
    if (dark && start < 0) start = y;
    if (dark || start < 0) continue;
    const [from, to] = [start / height, y / height];
    start = -1;
    if (to - from <= thickest && from > inside && to < 1 - inside) {
      if (!Number.isNaN(found)) return NaN; // two lines are no frame line
      found = (from + to) / 2;
    }
  }
  return found;
}

const farthest = 0.5;
/** A move must leave less than this share of the difference that there is without it. */
const clearly = 0.25;
/** Differences of rows below this square share of the light are noise. */
const noise = 1e-4;
/** Moves below this share of the height are weave. */
const leastMove = 0.025;

/** The vertical move under which the rows of two frames agree best, if it is far better than none. */
function moveOf(from: Float64Array, to: Float64Array): number {
  const height = from.length / strips;
  const difference = (move: number) => {
    let sum = 0;
    const [first, last] = [Math.max(0, move), Math.min(height, height + move)];
    for (let i = strips * first; i < strips * last; i++) sum += (to[i] - from[i - strips * move]) ** 2;
    return sum / (strips * (last - first));
  };
  const still = difference(0);
  let [move, least] = [0, still];
  const reach = Math.floor(farthest * height);
  for (let tried = -reach; tried <= reach; tried++) {
    const left = difference(tried);
    if (left < least) [move, least] = [tried, left];
  }
  return still > noise && least < clearly * still && Math.abs(move) > leastMove * height ? move / height : 0;
}

/** Looks at one frame after the other. */
export function lineWatcher(): (frame: LightFrame) => LineSight {
  let before: Float64Array | undefined;
  return (frame) => {
    const { bright, means } = rowsOf(frame);
    const move = before === undefined ? 0 : moveOf(before, means);
    before = means;
    return { line: lineIn(bright), move };
  };
}

/** Moves that come so close together are one: a mixed frame shows half of it. And a camera that tilts moves all the time. */
const together = 3;
const tilting = 8;
/** The line must stand so many frames on each side of a jump. */
const standing = 3;

/** A line that leaves at one edge comes in at the other: the nearer way counts. */
const nearer = (share: number): number => (share > 0.5 ? share - 1 : share < -0.5 ? share + 1 : share);

/** Jumps of the line itself: it stands, and then it stands elsewhere, or is gone. */
function lineJumps(lines: Float64Array): FrameLineJump[] {
  const stands = (from: number) => {
    const some = lines.slice(from, from + standing);
    if (some.length < standing) return undefined;
    if (some.every((line) => Number.isNaN(line))) return NaN;
    return some.every((line) => Math.abs(line - some[0]) < leastMove) ? some[standing >> 1] : undefined;
  };
  const jumps: FrameLineJump[] = [];
  let [last, lastAt] = [stands(0), 0];
  for (let n = 1; n + standing <= lines.length; n++) {
    const here = stands(n);
    if (here === undefined) continue;
    if (last !== undefined && n - lastAt <= 2 * standing && !Object.is(here, last)) {
      const share = nearer(here - last);
      if (!(Math.abs(share) < leastMove)) jumps.push({ frame: n, share });
    }
    [last, lastAt] = [here, n];
  }
  return jumps;
}

function isLonely(moves: Float64Array, at: number): boolean {
  let [near, size] = [0, 0];
  for (let n = Math.max(0, at - tilting); n <= Math.min(moves.length - 1, at + tilting); n++)
    if (Math.abs(n - at) > together && moves[n] !== 0) {
      near++;
      size = Math.max(size, Math.abs(moves[n]));
    }
  return near <= 1 || size < Math.abs(moves[at]) / 3;
}

/** The jumps of a recording, in order; what the picture and the line say together counts once. */
export function frameLineJumps(lines: Float64Array, moves: Float64Array): FrameLineJump[] {
  const moved = [...moves].flatMap((share, frame) =>
    share !== 0 && isLonely(moves, frame) ? [{ frame, share }] : [],
  );
  const all = [...moved, ...lineJumps(lines)].sort((a, b) => a.frame - b.frame);
  return all.reduce<FrameLineJump[]>((kept, jump) => {
    const last = kept[kept.length - 1];
    if (last === undefined || jump.frame - last.frame > together) return [...kept, jump];
    const share = Number.isNaN(last.share) ? jump.share : last.share;
    return [...kept.slice(0, -1), { frame: last.frame, share }];
  }, []);
}
