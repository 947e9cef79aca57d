import type { MakeDyeModel } from '../film/dye-model.js';
import { gateLight } from '../film/stock.js';
import type { Run } from '../maths/matrix3.js';
import type { Look } from './look-schema.js';
import { deliveryOf, toDelivery } from './sections/delivery.js';
import { compilePrint } from './sections/print.js';
import { compileFlare, compileLamp, projectorLight } from './sections/projector.js';
import { compileRolloff } from './sections/rolloff.js';
import { compileRoom } from './sections/room.js';
import { roomSchema } from './sections/room.js';
import { compileStock, isAged, stockSchema } from './sections/stock.js';

/** A stretch of the path: what its outcome hangs on besides the light that arrives, and its work when it is asked for. */
export interface Stretch {
  readonly hangsOn: unknown;
  readonly compile: () => Run[];
}

/**
 * THE order of the light path between camera and delivery, written down once. Linear BT.2020 relative to the open
 * gate, in place. A projector without a room is seen in the default room.
 * @param make how the spectral model of film is reckoned; left out: the plain way
 */
export function stretches(look: Look, make?: MakeDyeModel): Stretch[] {
  const { stock, print, projector, room: asked, camera, delivery } = look;
  const light = projector === undefined ? gateLight : projectorLight(projector);
  const { dyes } = stock ?? stockSchema.parse({});
  const { flare = 0, ...lamp } = projector ?? {};
  const room = asked ?? roomSchema.parse({});
  const device = deliveryOf(delivery, camera);
  return [
    { hangsOn: stock, compile: () => (stock === undefined ? [] : compileStock(stock, make)) },
    { hangsOn: print, compile: () => (print === undefined ? [] : compilePrint(print)) },
    {
      hangsOn: [lamp, dyes],
      compile: () => (projector === undefined ? [] : compileLamp(light, dyes, make)),
    },
    { hangsOn: flare, compile: () => compileFlare(flare) },
    { hangsOn: [room, lamp, device], compile: () => compileRoom(room, light, toDelivery(device)) },
  ];
}

/** The path as one list of steps. */
export const lightPath = (look: Look, make?: MakeDyeModel): Run[] =>
  stretches(look, make).flatMap(({ compile }) => compile());

/** Stray light of the scan, a share of the open gate: 0 where no dye is to be read. */
export const scanFlare = ({ camera, stock }: Pick<Look, 'camera' | 'stock'>): number =>
  stock !== undefined && isAged(stock) ? (camera.flare ?? 0) : 0;

/** How light ends: worked in the delivery's primaries, where nothing may pass 1. */
export function lightEnd(look: Look): Run[] {
  return look.rolloff === undefined ? [] : compileRolloff(look.rolloff);
}
