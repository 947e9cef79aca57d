import { gateLight } from '../film/stock.js';
import type { Run } from '../maths/matrix3.js';
import type { Look } from './look-schema.js';
import { deliveryOf, toDelivery } from './sections/delivery.js';
import { compilePrint } from './sections/print.js';
import { compileProjector, projectorLight } from './sections/projector.js';
import { compileRolloff } from './sections/rolloff.js';
import { compileRoom } from './sections/room.js';
import { roomSchema } from './sections/room.js';
import { compileStock, stockSchema } from './sections/stock.js';

/**
 * THE order of the light path between camera and delivery, written down once. Linear BT.2020 relative to the open
 * gate, in place. A projector without a room is seen in the default room.
 */
export function lightPath(look: Look): Run[] {
  const light = look.projector === undefined ? gateLight : projectorLight(look.projector);
  const dyes = (look.stock ?? stockSchema.parse({})).dyes;
  return [
    ...(look.stock === undefined ? [] : compileStock(look.stock)),
    ...(look.print === undefined ? [] : compilePrint(look.print)),
    ...(look.projector === undefined ? [] : compileProjector(look.projector, light, dyes)),
    ...compileRoom(
      look.room ?? roomSchema.parse({}),
      light,
      toDelivery(deliveryOf(look.delivery, look.camera)),
    ),
  ];
}

/** How light ends: worked in the delivery's primaries, where nothing may pass 1. */
export function lightEnd(look: Look): Run[] {
  return look.rolloff === undefined ? [] : compileRolloff(look.rolloff);
}
