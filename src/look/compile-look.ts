import type { MakeDyeModel } from '../film/dye-model.js';
import { behindScanFlare, filmAlone } from '../film/scan-flare.js';
import type { Run } from '../maths/matrix3.js';
import { canonicalJson } from './canonical-look.js';
import { lightEnd, lightPath, scanFlare } from './light-path.js';
import type { Look } from './look-schema.js';
import { probeCodes } from './probe-codes.js';
import { readCamera } from './sections/camera.js';
import {
  type Delivery,
  deliveryOf,
  fitGamut,
  toDeliveryPrimaries,
  writeDelivery,
} from './sections/delivery.js';
import { inTurn } from './sections/section.js';

/** Whether the device expects just what the camera wrote. */
function deliversAsRecorded(look: Look, { encoding, primaries, range }: Delivery): boolean {
  const { camera } = look;
  return (
    canonicalJson([encoding, primaries, range]) ===
    canonicalJson([camera.encoding, camera.primaries, camera.range])
  );
}

/**
 * Makes one function of a look: code values red green blue, 0..1, in place, as the camera wrote them to as the device
 * expects them. Linear time, no allocation per colour. Where nothing is asked it is the identity.
 * @param make how the spectral model of film is reckoned; left out: the plain way. Every way gives the same numbers.
 */
export function compileLook(look: Look, make?: MakeDyeModel): Run {
  const delivery = deliveryOf(look.delivery, look.camera);
  const [path, end] = [lightPath(look, make), lightEnd(look)];
  if (path.length + end.length === 0 && deliversAsRecorded(look, delivery)) return () => {};
  const read = readCamera(look.camera);
  const flare = scanFlare(look);
  const convert = toDeliveryPrimaries(delivery);
  const project = inTurn([...path, convert]);
  const arriving = probeCodes(look.camera);
  inTurn([read, filmAlone(flare), project])(arriving, arriving.length / 3);
  const picture = behindScanFlare(flare, inTurn([project, ...fitGamut(delivery, arriving)]), convert);
  return inTurn([read, picture, ...end, writeDelivery(delivery, look.camera)]);
}
