import {
  between,
  fromRgbFactors,
  lumaCodes,
  type MatrixName,
  rgbCodes,
  toRgbFactors,
} from '../colour/luma-chroma.js';
import type { SignalRange } from '../colour/signal-range.js';
import { type PlaneLayout, planesOf } from './planes.js';
import { lumaChromaToRgb, planeToCodes } from './planes-to-rgb.js';
import { codesToPlane, rgbToLumaChroma } from './rgb-to-planes.js';

/** A movie's frames: how they lie in planes, and what the codes stand for. */
export interface FrameCoding {
  readonly layout: PlaneLayout;
  readonly matrix: MatrixName;
  readonly range: SignalRange;
}

/** Planes of RGB lie green, blue, red: the place of each in an interleaved pixel. */
const placeOfPlane = [1, 2, 0];

/**
 * A frame in planes to red, green and blue of 16 bits, interleaved.
 * @param bytes as `layout` says
 * @param target 3 width height codes
 * @param rgbRange what its codes are to be: full, or legal as a look may ask for
 */
export function frameToRgb(
  { layout, matrix, range }: FrameCoding,
  bytes: Uint8Array,
  target: Uint16Array,
  rgbRange: SignalRange = 'full',
): void {
  const planes = planesOf(layout, bytes);
  const { bits } = layout;
  if (layout.kind === 'luma-chroma')
    return lumaChromaToRgb(layout, planes, toRgbFactors({ matrix, bits, range, rgbRange }), target);
  const scale = between(lumaCodes(bits, range), rgbCodes(rgbRange));
  placeOfPlane.forEach((place, i) =>
    planeToCodes(planes[layout.kind === 'rgb' ? i : 0], scale, target, place, 3),
  );
}

/** A frame's luma, or its one grey plane, to 16 bits full range. @param target width height codes */
export function frameToGrey({ layout, range }: FrameCoding, bytes: Uint8Array, target: Uint16Array): void {
  if (layout.kind === 'rgb') throw new RangeError('planes of RGB have no luma');
  planeToCodes(planesOf(layout, bytes)[0], between(lumaCodes(layout.bits, range), rgbCodes('full')), target);
}

/** The other way round: red, green and blue to a frame in planes, luma-chroma or RGB. */
export function rgbToFrame(
  { layout, matrix, range }: FrameCoding,
  source: Uint16Array,
  bytes: Uint8Array,
  rgbRange: SignalRange = 'full',
): void {
  const planes = planesOf(layout, bytes);
  const { bits } = layout;
  if (layout.kind === 'grey') throw new RangeError('a look gives colours: grey planes cannot take them');
  if (layout.kind === 'luma-chroma')
    return rgbToLumaChroma(layout, source, fromRgbFactors({ matrix, bits, range, rgbRange }), planes);
  const scale = between(rgbCodes(rgbRange), lumaCodes(bits, range));
  placeOfPlane.forEach((place, i) => codesToPlane(source, scale, planes[i], bits, place, 3));
}
