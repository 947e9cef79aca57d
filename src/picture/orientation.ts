/** What can be turned: interleaved values of any kind, row by row from the top left. */
interface Turnable {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly data: Uint8Array | Uint16Array | Float32Array;
}

/** How a picture was stored: its axes exchanged, then what is left and right, top and bottom. */
interface Turn {
  readonly transposed: boolean;
  readonly mirrorX: boolean;
  readonly mirrorY: boolean;
}

const turn = (transposed: boolean, mirrorX: boolean, mirrorY: boolean): Turn => ({
  transposed,
  mirrorX,
  mirrorY,
});

/**
 * The eight orientations of EXIF (CIPA DC-008, tag 0x0112), as what makes the stored picture upright:
 * mirror the stored picture left-right (X) or top-bottom (Y), then exchange rows and columns.
 */
const turns: Readonly<Record<number, Turn>> = {
  1: turn(false, false, false),
  2: turn(false, true, false),
  3: turn(false, true, true),
  4: turn(false, false, true),
  5: turn(true, false, false),
  6: turn(true, false, true),
  7: turn(true, true, true),
  8: turn(true, true, false),
};

type DataConstructor = new (length: number) => Turnable['data'];

function applyTurn<P extends Turnable>(picture: P, { transposed, mirrorX, mirrorY }: Turn): P {
  const { width, height, channels, data } = picture;
  const turned = new (data.constructor as DataConstructor)(data.length);
  const out: P = {
    ...picture,
    ...(transposed && { width: height, height: width }),
    data: turned,
  };
  // Steps through the stored data for one step right and one step down in the upright picture.
  const stepX = (mirrorX ? -1 : 1) * channels;
  const stepY = (mirrorY ? -1 : 1) * width * channels;
  const [right, down] = transposed ? [stepY, stepX] : [stepX, stepY];
  const start = ((mirrorX ? width - 1 : 0) + (mirrorY ? height - 1 : 0) * width) * channels;
  let to = 0;
  for (let y = 0; y < out.height; y++) {
    let from = start + y * down;
    for (let x = 0; x < out.width; x++, from += right)
      for (let c = 0; c < channels; c++) turned[to++] = data[from + c];
  }
  return out;
}

/**
 * The picture turned upright by its EXIF orientation, 1..8. Anything else counts as 1, which returns the picture
 * itself: readers of the tag are asked to ignore reserved values.
 */
export function turnUpright<P extends Turnable>(picture: P, orientation: number): P {
  const found = turns[orientation];
  return found === undefined || orientation === 1 ? picture : applyTurn(picture, found);
}

/** Mirrorings a film needs when it lay in the gate the other way round: left-right, top-bottom, both (half a turn). */
export const flips = { h: 2, v: 4, hv: 3 } as const satisfies Record<string, number>;

export type Flip = keyof typeof flips;

/** The picture mirrored left-right (`h`), top-bottom (`v`) or both (`hv`). */
export function flipPicture<P extends Turnable>(picture: P, flip: Flip): P {
  return turnUpright(picture, flips[flip]);
}
