/** How a picture lies in planes, as movies keep it: one plane after the other, each row by row from the top left. */
export interface PlaneLayout {
  readonly width: number;
  readonly height: number;
  /** `luma-chroma`: Y', CB, CR; `rgb`: green, blue, red, the order in which planes of RGB are kept; `grey`: one plane. */
  readonly kind: 'luma-chroma' | 'rgb' | 'grey';
  /** Bits of a code: 8 lie in bytes, 9 to 16 in two bytes, the low one first. */
  readonly bits: number;
  /** Luma pixels for one of the colour-difference planes, across and down: 2, 1 is 4:2:2, 2, 2 is 4:2:0. */
  readonly across: 1 | 2;
  readonly down: 1 | 2;
  /** Where a colour difference lies: on the first of its luma pixels, or midway between them. */
  readonly siteAcross: Siting;
  readonly siteDown: Siting;
}

export type Siting = 'first' | 'midway';

export type Plane = Uint8Array | Uint16Array;

/** Size of each plane; a half pixel counts as one. */
export function planeSizes({ width, height, kind, across, down }: PlaneLayout): [number, number][] {
  const whole: [number, number] = [width, height];
  if (kind === 'grey') return [whole];
  const part: [number, number] = [Math.ceil(width / across), Math.ceil(height / down)];
  return kind === 'rgb' ? [whole, whole, whole] : [whole, part, part];
}

/** Bytes of a picture in planes. */
export function planeBytes(layout: PlaneLayout): number {
  const codes = planeSizes(layout).reduce((sum, [width, height]) => sum + width * height, 0);
  return codes * (layout.bits > 8 ? 2 : 1);
}

/**
 * The planes of a picture that lies in `bytes`, not copied.
 * @param bytes begins at an even address where codes have two bytes
 */
export function planesOf(layout: PlaneLayout, { buffer, byteOffset }: Uint8Array): Plane[] {
  let at = byteOffset;
  return planeSizes(layout).map(([width, height]) => {
    const length = width * height;
    const plane = layout.bits > 8 ? new Uint16Array(buffer, at, length) : new Uint8Array(buffer, at, length);
    at += plane.byteLength;
    return plane;
  });
}
