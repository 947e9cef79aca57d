import { degreeOfAdaptation } from '../../colour/adaptation.js';
import type { FilmLight } from '../../film/film-light.js';
import { gateLight } from '../../film/stock.js';
import { identity3, type Matrix3, type Run, transformRun3 } from '../../maths/matrix3.js';
import { lampAsSeen, openGateLuminance, surroundExponent, surroundRun } from '../../projection/viewing.js';
import { z } from 'zod';
import { nameField, namesOf, numberField } from './section.js';

const surround = (description: string) =>
  nameField(namesOf(surroundExponent), description).default('average');

export const roomSchema = z.strictObject({
  screenLuminance: numberField(0.5, 1000, 30, 'luminance of the screen at open gate, cd/m2'),
  surround: surround('surround of the screen: the room the film was shown in'),
  adaptation: z.number().min(0).max(1).optional().meta({
    description:
      'degree of adaptation to the lamp, 0 none to 1 full; left out: from screen luminance and surround (CIE 159)',
  }),
  displaySurround: surround('surround of the display that will show the result'),
});

export type Room = z.output<typeof roomSchema>;

/** The adapting luminance is taken as a fifth of the white's (grey-world rule, CIE 159:2004). */
export function adaptationOf({ adaptation, screenLuminance, surround }: Room): number {
  return adaptation ?? degreeOfAdaptation(screenLuminance / 5, surround);
}

/**
 * What the eye makes of the screen: the lamp's warmth as far as it stays visible, the dark room's contrast.
 * @param display linear BT.2020 to the primaries of the display, which the open gate just fits
 */
export function compileRoom(room: Room, light: FilmLight, display: Matrix3): Run[] {
  const lit = light !== gateLight;
  const seen = lit ? lampAsSeen(light.openGate, adaptationOf(room), display) : identity3;
  const { surround, displaySurround } = room;
  return [
    ...(lit ? [(values: Float64Array, count: number) => transformRun3(seen, values, count)] : []),
    ...(surround === displaySurround
      ? []
      : [surroundRun(surround, displaySurround, openGateLuminance(seen))]),
  ];
}
