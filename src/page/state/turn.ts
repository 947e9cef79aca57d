/** How the reel is held for viewing: rows and columns exchanged, then what is left and right, top and bottom. */
export interface Turn {
  readonly transposed: boolean;
  readonly mirrorX: boolean;
  readonly mirrorY: boolean;
}

export const upright: Turn = { transposed: false, mirrorX: false, mirrorY: false };

/** A quarter turn clockwise of what is seen. */
export function turnedRight({ transposed, mirrorX, mirrorY }: Turn): Turn {
  return transposed
    ? { transposed: false, mirrorX: !mirrorX, mirrorY }
    : { transposed: true, mirrorX, mirrorY: !mirrorY };
}

/** What is seen mirrored left-right. */
export function mirroredAcross({ transposed, mirrorX, mirrorY }: Turn): Turn {
  return transposed ? { transposed, mirrorX, mirrorY: !mirrorY } : { transposed, mirrorX: !mirrorX, mirrorY };
}

/** What is seen mirrored top-bottom. */
export const mirroredDown = (turn: Turn): Turn => turnedRight(turnedRight(mirroredAcross(turn)));

/** The number that EXIF (CIPA DC-008, tag 0x0112) gives to the turn. */
export function orientationOf({ transposed, mirrorX, mirrorY }: Turn): number {
  const [first, across, down, both] = transposed ? [5, 6, 8, 7] : [1, 2, 4, 3];
  return mirrorX ? (mirrorY ? both : across) : mirrorY ? down : first;
}

type Point = readonly [x: number, y: number];

/** Where a place of the picture as seen lies in the picture as stored; both as shares of width and height, 0..1. */
export function storedPlace({ transposed, mirrorX, mirrorY }: Turn, [x, y]: Point): Point {
  const [u, v] = transposed ? [y, x] : [x, y];
  return [mirrorX ? 1 - u : u, mirrorY ? 1 - v : v];
}

/** Where a place of the picture as stored is seen. */
export function seenPlace({ transposed, mirrorX, mirrorY }: Turn, [u, v]: Point): Point {
  const [x, y]: Point = [mirrorX ? 1 - u : u, mirrorY ? 1 - v : v];
  return transposed ? [y, x] : [x, y];
}
