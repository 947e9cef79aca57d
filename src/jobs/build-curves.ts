import { InputError } from '../errors/input-error.js';
import { compileLook } from '../look/compile-look.js';
import type { Look } from '../look/look-schema.js';
import { channelCrossing, sampleCurves } from '../lut/curves.js';
import type { CurveTable } from '../lut/lattice.js';
import type { Run } from '../maths/matrix3.js';
import { type BuildOptions, type Maker, type WrittenLut, writtenLut } from './build-look.js';

/** Entries of the curves when nothing is asked: what devices commonly load (common practice, no source). */
export const usualCurveSize = 1024;

/** Half a code at 10 bit: what a device's own rounding hides. */
const mostCrossing = 0.5 / 1023;

const channelNames = ['red', 'green', 'blue'];

/** @throws InputError with the measured error for a look in which an output channel depends on other channels */
function requireCurves(look: Look, compiled: Run): void {
  const { largest, at, channel } = channelCrossing(compiled);
  if (largest <= mostCrossing) return;
  const codes = at.map((code) => Math.round(255 * code)).join(' ');
  throw new InputError({
    what: `"${look.name}" mixes channels, which curves cannot do: at codes ${codes} of 255 they would put ${channelNames[channel]} ${(255 * largest).toFixed(1)} codes off`,
    allowed: `looks that curves hold within ${(255 * mostCrossing).toFixed(2)} codes of 255`,
    hint: 'Build it without --curves.',
  });
}

/**
 * A look as a 1D LUT, one curve a channel, for a look in which every channel goes by itself: encodings, range,
 * exposure, printer points and contrast in the camera's own primaries.
 * @param options `size`: entries, 2..65536
 * @throws InputError for a size that no LUT has, and for a look that mixes channels
 */
export function buildCurves(look: Look, options: BuildOptions, maker: Maker): WrittenLut<CurveTable> {
  const compiled = compileLook(look, maker.makeDyeModel);
  requireCurves(look, compiled);
  return writtenLut(sampleCurves(compiled, options.size), look, options, maker);
}
