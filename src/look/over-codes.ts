import type { MakeDyeModel } from '../film/dye-model.js';
import { behindScanFlare, filmAlone } from '../film/scan-flare.js';
import type { Run } from '../maths/matrix3.js';
import { lightEnd, scanFlare, type Stretch, stretches } from './light-path.js';
import type { Look } from './look-schema.js';
import { probeCodes } from './probe-codes.js';
import { readCamera } from './sections/camera.js';
import { deliveryOf, fitGamut, toDeliveryPrimaries, writeDelivery } from './sections/delivery.js';
import { inTurn } from './sections/section.js';

interface Reached {
  readonly key: string;
  readonly values: Float64Array;
}

/** How far some colours have come, stretch by stretch: kept, so that only what differs is gone again. */
function memory() {
  let kept: readonly Reached[] = [];
  return (start: () => Float64Array, path: readonly { key: string; runs: () => Run[] }[]): Float64Array => {
    const changed = path.findIndex(({ key }, i) => kept[i]?.key !== key);
    const from = changed < 0 ? path.length : changed;
    const reached = kept.slice(0, from);
    for (const { key, runs } of path.slice(from)) {
      const arriving = reached[reached.length - 1]?.values ?? start();
      const steps = runs();
      const values = steps.length === 0 ? arriving : arriving.slice();
      inTurn(steps)(values, values.length / 3);
      reached.push({ key, values });
    }
    kept = reached;
    return reached[reached.length - 1].values;
  };
}

const keyed = ({ hangsOn, compile }: Stretch) => {
  let made: Run[] | undefined;
  return { key: JSON.stringify(hangsOn) ?? '', runs: () => (made ??= compile()) };
};

/**
 * What looks make of one and the same code values, one look after the other: the same as `compileLook` gives, in less
 * time where a look differs from the one before only late in the path. For a control that moves.
 * @param codes rows r g b, 0..1, left as they are
 * @param make as `compileLook` has it
 * @returns for a look: a new array of rows r g b as the device expects them
 */
export function lookOverCodes(codes: Float64Array, make?: MakeDyeModel): (look: Look) => Float64Array {
  const [read, readProbes, own, probed] = [memory(), memory(), memory(), memory()];
  return (look) => {
    const { camera } = look;
    const delivery = deliveryOf(look.delivery, camera);
    const flare = scanFlare(look);
    const convert = toDeliveryPrimaries(delivery);
    const reading = [keyed({ hangsOn: camera, compile: () => [readCamera(camera)] })];
    const path = [
      keyed({ hangsOn: [camera, flare], compile: () => [] }),
      ...stretches(look, make).map(keyed),
      keyed({ hangsOn: delivery, compile: () => [convert] }),
    ];
    const light = readProbes(() => probeCodes(camera), reading).slice();
    filmAlone(flare)(light, light.length / 3);
    const arriving = probed(() => light, path);
    const project: Run = (film) => film.set(own(() => film.slice(), path));
    const picture = behindScanFlare(flare, inTurn([project, ...fitGamut(delivery, arriving)]), convert);
    const values = read(() => codes, reading).slice();
    inTurn([picture, ...lightEnd(look), writeDelivery(delivery, camera)])(values, values.length / 3);
    return values;
  };
}
