import { expandGrey, hasAlpha, type Picture } from '../../picture/picture.js';

/** A picture as a display holds it: RGBA, four codes a pixel; bytes, or half floats of 0..1. */
export interface Level {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array | Uint16Array;
}

/** The half float (IEEE 754 binary16) nearest to a number of 0..1. */
function halfOf(value: number): number {
  if (value <= 0) return 0;
  const exponent = Math.max(-14, Math.floor(Math.log2(value)));
  const steps = Math.round((value / 2 ** exponent) * 1024);
  // Below 2^-14 the leading one is not there (subnormal); a mantissa that rounds up carries into the exponent.
  return exponent === -14 && steps < 1024 ? steps : ((exponent + 15) << 10) + steps - 1024;
}

let halves: Uint16Array | undefined;
const halfTable = () => (halves ??= Uint16Array.from({ length: 65536 }, (_, code) => halfOf(code / 65535)));

/** RGBA at the picture's own depth. */
function withAlpha(picture: Picture): Picture['data'] {
  const { data, bits } = expandGrey(picture);
  if (hasAlpha(picture)) return data.slice();
  const pixels = picture.width * picture.height;
  const out = bits === 8 ? new Uint8Array(4 * pixels) : new Uint16Array(4 * pixels);
  const last = bits === 8 ? 255 : 65535;
  for (let from = 0, to = 0; to < out.length; from += 3, to += 4) {
    out[to] = data[from];
    out[to + 1] = data[from + 1];
    out[to + 2] = data[from + 2];
    out[to + 3] = last;
  }
  return out;
}

/** Half as large each way: every pixel the mean of four; an odd last row or column is left out, as textures want it. */
function halved({ width, height, data }: Level): Level {
  const [w, h] = [Math.max(1, width >> 1), Math.max(1, height >> 1)];
  const out = data instanceof Uint16Array ? new Uint16Array(4 * w * h) : new Uint8Array(4 * w * h);
  const right = width > 1 ? 4 : 0;
  const down = height > 1 ? 4 * width : 0;
  for (let y = 0, to = 0; y < h; y++)
    for (let x = 0, at = 8 * y * width; x < w; x++, at += 8)
      for (let c = at; c < at + 4; c++)
        out[to++] = (data[c] + data[c + right] + data[c + down] + data[c + right + down] + 2) >> 2;
  return { width: w, height: h, data: out };
}

/** Levels are halved down to this many pixels along the longer side. */
const smallest = 64;

/**
 * A picture and its halvings, as a display wants them.
 * @param halfFloats whether 16-bit codes become half floats; otherwise the upper eight bits are kept
 */
export function levelsOf(picture: Picture, halfFloats: boolean): Level[] {
  const codes: Level[] = [{ width: picture.width, height: picture.height, data: withAlpha(picture) }];
  for (let level = codes[0]; Math.max(level.width, level.height) > smallest;)
    codes.push((level = halved(level)));
  if (picture.bits === 8) return codes;
  const table = halfFloats ? halfTable() : undefined;
  return codes.map(({ width, height, data }) => {
    const out = table === undefined ? new Uint8Array(data.length) : new Uint16Array(data.length);
    if (table === undefined) for (let i = 0; i < out.length; i++) out[i] = Math.round(data[i] / 257);
    else for (let i = 0; i < out.length; i++) out[i] = table[data[i]];
    return { width, height, data: out };
  });
}
