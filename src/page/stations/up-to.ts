import type { Look } from '../../look/look-schema.js';

/** The stations of the way from gate to file, in the order in which light meets them. */
export const stationNames = ['gate', 'stock', 'print', 'lamp', 'screen', 'eye', 'file'] as const;

export type StationName = (typeof stationNames)[number];

/** Steps of the wedge that a station's sketch shows. */
export const wedgeSteps = 9;

/** A screen that shows code values as they are meant. */
const plainScreen = {
  encoding: 'srgb',
  primaries: 'bt709',
  range: 'full',
  gamutCompression: false,
} as const satisfies Look['delivery'];

/** What an eye does that nothing was said about: it adapts as the screen lets it, before a display like the room. */
function roomSeenBy(room: Look['room']): Look['room'] {
  if (room === undefined) return undefined;
  const { screenLuminance, surround, displaySurround } = room;
  return { screenLuminance, surround, displaySurround };
}

/**
 * The look as far as light has come behind a station, on a plain screen: what the sketches along the path show.
 * Screen and eye share the look's room: the screen gives brightness and surround, the eye its own adaptation.
 */
export function lookUpTo(look: Look, station: StationName): Look {
  const reached = (name: StationName) => stationNames.indexOf(name) <= stationNames.indexOf(station);
  if (station === 'file') return look;
  return {
    name: look.name,
    note: '',
    camera: look.camera,
    ...(reached('stock') && look.stock ? { stock: look.stock } : {}),
    ...(reached('print') && look.print ? { print: look.print } : {}),
    ...(reached('lamp') && look.projector
      ? { projector: { ...look.projector, flare: reached('screen') ? look.projector.flare : 0 } }
      : {}),
    ...(reached('eye') ? { room: look.room } : reached('screen') ? { room: roomSeenBy(look.room) } : {}),
    delivery: plainScreen,
  };
}
