import type { PlaneLayout } from '../picture/planes.js';

/** How frames of a pixel format are asked for: always planes, the low byte first, no alpha. */
export interface AskedFormat extends Pick<PlaneLayout, 'kind' | 'bits' | 'across' | 'down'> {
  /** The format's name. */
  readonly name: string;
  /** Whether an alpha channel is left behind. */
  readonly alpha: boolean;
}

const sampling = { '420': [2, 2], '422': [2, 1], '444': [1, 1] } as const;
type Sampling = keyof typeof sampling;

const deep = (bits: number) => (bits > 8 ? `${bits}le` : '');

function lumaChroma(pattern: Sampling, bits: number, alpha = false, jpeg = false): AskedFormat {
  const [across, down] = sampling[pattern];
  const name = `yuv${jpeg ? 'j' : ''}${pattern}p${deep(bits)}`;
  return { name, kind: 'luma-chroma', bits, across, down, alpha };
}

const rgb = (bits: number, alpha = false): AskedFormat => ({
  name: `gbrp${deep(bits)}`,
  kind: 'rgb',
  bits,
  across: 1,
  down: 1,
  alpha,
});

const grey = (bits: number, alpha = false): AskedFormat => ({
  name: `gray${deep(bits)}`,
  kind: 'grey',
  bits,
  across: 1,
  down: 1,
  alpha,
});

/** Depths that planes of each kind come in. */
const depths = new Set([8, 9, 10, 12, 14, 16]);

/** Packed and half-packed formats, and the planes that hold the same codes. */
const packed: Readonly<Record<string, AskedFormat>> = {
  nv12: lumaChroma('420', 8),
  nv21: lumaChroma('420', 8),
  nv16: lumaChroma('422', 8),
  nv20le: lumaChroma('422', 10),
  nv24: lumaChroma('444', 8),
  nv42: lumaChroma('444', 8),
  yuyv422: lumaChroma('422', 8),
  yvyu422: lumaChroma('422', 8),
  uyvy422: lumaChroma('422', 8),
  p010le: lumaChroma('420', 10),
  p012le: lumaChroma('420', 12),
  p016le: lumaChroma('420', 16),
  p210le: lumaChroma('422', 10),
  p216le: lumaChroma('422', 16),
  p410le: lumaChroma('444', 10),
  p416le: lumaChroma('444', 16),
  y210le: lumaChroma('422', 10),
  y212le: lumaChroma('422', 12),
  // Rarer patterns: their colour differences are spread to every pixel.
  yuv410p: lumaChroma('444', 8),
  yuv411p: lumaChroma('444', 8),
  yuvj411p: lumaChroma('444', 8, false, true),
  uyyvyy411: lumaChroma('444', 8),
  yuv440p: lumaChroma('444', 8),
  yuvj440p: lumaChroma('444', 8, false, true),
  yuv440p10le: lumaChroma('444', 10),
  yuv440p12le: lumaChroma('444', 12),
  pal8: rgb(8),
  ya8: grey(8, true),
  ya16le: grey(16, true),
  ya16be: grey(16, true),
  x2rgb10le: rgb(10),
  x2bgr10le: rgb(10),
};

/** The planes in which frames of a pixel format are read, or undefined for one that is not known. */
export function askedFormat(pixelFormat: string): AskedFormat | undefined {
  if (pixelFormat in packed) return packed[pixelFormat];
  const planes = /^yuv(a|j)?(420|422|444)p(\d+)?(?:le|be)?$/.exec(pixelFormat);
  if (planes !== null) {
    const bits = Number(planes[3] ?? 8);
    if (depths.has(bits))
      return lumaChroma(planes[2] as Sampling, bits, planes[1] === 'a', planes[1] === 'j');
  }
  const colours = /^gbr(a)?p(\d+)?(?:le|be)?$/.exec(pixelFormat);
  if (colours !== null && depths.has(Number(colours[2] ?? 8)))
    return rgb(Number(colours[2] ?? 8), colours[1] === 'a');
  const one = /^gray(\d+)?(?:le|be)?$/.exec(pixelFormat);
  if (one !== null && depths.has(Number(one[1] ?? 8))) return grey(Number(one[1] ?? 8));
  if (/^(rgb|bgr)48(le|be)$/.test(pixelFormat)) return rgb(16);
  if (/^(rgba|bgra)64(le|be)$/.test(pixelFormat)) return rgb(16, true);
  if (/^(rgba|bgra|argb|abgr)$/.test(pixelFormat)) return rgb(8, true);
  if (/^(rgb24|bgr24|0rgb|0bgr|rgb0|bgr0)$/.test(pixelFormat)) return rgb(8);
  return undefined;
}
