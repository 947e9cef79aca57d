import { primaries } from '../../colour/primaries/index.js';
import { rgbToRgb, rgbToXyz } from '../../colour/primaries/rgb-matrix.js';
import { fromFull } from '../../colour/signal-range.js';
import { gamutCompressionRun, highestOutness } from '../../delivery/gamut-compression.js';
import { type Matrix3, type Run, transformRun3, type Triple } from '../../maths/matrix3.js';
import { z } from 'zod';
import type { Camera } from './camera.js';
import { openGateOf } from './camera.js';
import { encodingField, primariesField, primariesOf, rangeField, transferFunctionOf } from './signal.js';

export const deliverySchema = z.strictObject({
  encoding: encodingField('transfer function the device expects; left out: as the camera').optional(),
  primaries: primariesField('primaries the device expects; left out: as the camera').optional(),
  range: rangeField('full or legal code values; left out: as the camera').optional(),
  gamutCompression: z
    .boolean()
    .default(true)
    .meta({ description: 'bring colours outside the primaries in along their hue; false: cut them' }),
});

/** Delivery with everything left out filled in from the camera. */
export type Delivery = Required<z.output<typeof deliverySchema>>;

export function deliveryOf(delivery: z.output<typeof deliverySchema>, camera: Camera): Delivery {
  const { encoding, primaries, range, gamutCompression } = delivery;
  return {
    encoding: encoding ?? camera.encoding,
    primaries: primaries ?? camera.primaries,
    range: range ?? camera.range,
    gamutCompression,
  };
}

/** Linear BT.2020 -> the delivery's primaries. */
export const toDelivery = (delivery: Delivery): Matrix3 =>
  rgbToRgb(primaries.bt2020, primariesOf(delivery.primaries));

/** The same for a run, nothing brought in or cut. */
export function toDeliveryPrimaries(delivery: Delivery): Run {
  const matrix = toDelivery(delivery);
  return (values, count) => transformRun3(matrix, values, count);
}

/** Below the luminance of any blue that light can have; so much keeps a grey well between its channels. */
const leastWeight = 0.02;

/**
 * Luminance weights of the delivery's primaries. A camera's primaries may lie beyond all light, where blue has less than
 * no luminance; it is given a little then.
 */
function greyWeights(delivery: Delivery): Triple {
  const [r, g, b] = rgbToXyz(primariesOf(delivery.primaries))
    .slice(3, 6)
    .map((weight) => Math.max(weight, leastWeight));
  const sum = r + g + b;
  return [r / sum, g / sum, b / sum];
}

/**
 * Gamut compression as far as it is needed.
 * @param arriving linear colours in the delivery's primaries that stand for all that can come
 */
export function fitGamut(delivery: Delivery, arriving: Float64Array): Run[] {
  if (!delivery.gamutCompression) return [];
  const luma = greyWeights(delivery);
  return [gamutCompressionRun(highestOutness(arriving, arriving.length / 3, luma), luma)];
}

/**
 * Linear light relative to the open gate -> code values 0..1. The open gate keeps its level over diffuse white; black and
 * white of the range are never passed.
 */
export function writeDelivery(delivery: Delivery, camera: Camera): Run {
  const { encode, whiteLight } = transferFunctionOf(delivery.encoding);
  const level = (openGateOf(camera) * whiteLight) / transferFunctionOf(camera.encoding).whiteLight;
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) {
      const signal = encode(level * values[i]);
      values[i] = fromFull(signal > 0 ? Math.min(signal, 1) : 0, delivery.range);
    }
  };
}
