import { InputError } from '../errors/input-error.js';
import { grid, resamplePairsToGrid } from '../colour/spectrum.js';
import { filmLight, showsColours } from '../film/film-light.js';
import type { Look } from './look-schema.js';

/** A measured lamp must be known at least between these wavelengths, nm. */
const known = { from: 400, to: 700 } as const;

function pairOf(line: string, number: number, file: string): readonly [number, number] {
  const cells = line.split(/[,;\t]/).map((cell) => cell.trim());
  const [nm, power] = cells.map(Number);
  if (
    cells.length === 2 &&
    cells.every((cell) => cell !== '') &&
    Number.isFinite(nm) &&
    power >= 0 &&
    power < Infinity
  )
    return [nm, power];
  throw new InputError({
    file,
    line: number,
    what: `${JSON.stringify(line.slice(0, 40))} is not a wavelength in nm and a power`,
    allowed: 'two numbers with a decimal point, a comma, semicolon or tab between them',
  });
}

/** Whether a first line is a heading. */
const isHeading = (line: string, number: number) => number === 1 && /^[^\d.+-]/.test(line);

/**
 * Reads a lamp file: one line a wavelength, `nm, power`; lines that begin with # and a heading are passed over.
 * @returns the power on the wavelength grid, as a look's `spectrum`
 * @throws InputError with the line
 */
export function readLampFile(text: string, file: string) {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const pairs = lines.flatMap((raw, i) => {
    const line = raw.trim();
    return line === '' || line.startsWith('#') || isHeading(line, i + 1) ? [] : [pairOf(line, i + 1, file)];
  });
  const falls = pairs.findIndex(([nm], i) => i > 0 && nm <= pairs[i - 1][0]);
  if (falls > 0) throw new InputError({ file, what: `the wavelengths do not rise at ${pairs[falls][0]} nm` });
  if (pairs.length < 10 || pairs[0][0] > known.from || pairs[pairs.length - 1][0] < known.to)
    throw new InputError({
      file,
      what: 'does not describe the whole lamp',
      allowed: `10 lines or more from ${known.from} to ${known.to} nm`,
    });
  const spectrum = resamplePairsToGrid(pairs);
  if (!showsColours(filmLight(spectrum)))
    throw new InputError({ file, what: 'the lamp lacks red, green or blue light' });
  return { startNm: grid.startNm, stepNm: grid.stepNm, values: [...spectrum] };
}

/** The lamp file that a look names, if it names one. */
export function lampFileOf({ projector }: Look): string | undefined {
  const lamp = projector?.lamp;
  return typeof lamp === 'object' && 'file' in lamp ? lamp.file : undefined;
}

/** The look with the spectrum of its lamp file in the file's place, so that it stands alone and its hash holds the lamp. */
export function withLampSpectrum(look: Look, spectrum: ReturnType<typeof readLampFile>): Look {
  return { ...look, projector: { heatFilter: false, flare: 0, ...look.projector, lamp: { spectrum } } };
}
