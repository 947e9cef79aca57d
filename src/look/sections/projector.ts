import { planck } from '../../colour/illuminants/planck.js';
import { resampleToGrid, type Spectrum } from '../../colour/spectrum.js';
import type { MakeDyeModel } from '../../film/dye-model.js';
import { dyeSets, type DyeSetName } from '../../film/dye-sets/index.js';
import { filmLight, type FilmLight, showsColours } from '../../film/film-light.js';
import { gateLight, relight } from '../../film/stock.js';
import type { Run } from '../../maths/matrix3.js';
import { flareRun } from '../../projection/flare.js';
import { behindHeatFilter } from '../../projection/heat-filter.js';
import { lamps } from '../../projection/lamps/index.js';
import { z } from 'zod';
import { nameField, namesOf, numberField } from './section.js';

const measuredSpectrum = z
  .strictObject({
    startNm: z.number().min(200).max(400).meta({ description: 'first wavelength, nm' }),
    stepNm: z.number().min(0.1).max(20).meta({ description: 'step, nm' }),
    values: z
      .array(z.number().min(0).max(1e12))
      .min(20)
      .max(10000)
      .meta({ description: 'relative spectral power' }),
  })
  .superRefine(({ startNm, stepNm, values }, context) => {
    const endNm = startNm + stepNm * (values.length - 1);
    if (endNm < 700)
      context.addIssue({
        code: 'custom',
        path: ['values'],
        message: `end at ${endNm} nm; a lamp must be known from 400 to 700 nm`,
      });
    else if (!showsColours(filmLight(resampleToGrid(startNm, stepNm, values))))
      context.addIssue({ code: 'custom', path: ['values'], message: 'lack red, green or blue light' });
  });

const lampField = z
  .union([
    nameField(namesOf(lamps), 'a lamp by name'),
    z.strictObject({
      kelvin: z
        .number()
        .min(1500)
        .max(25000)
        .meta({ description: 'temperature of a Planck radiator, kelvin' }),
    }),
    z.strictObject({ spectrum: measuredSpectrum }),
    z.strictObject({
      file: z
        .string()
        .min(1)
        .meta({ description: 'CSV file of wavelength in nm and power, beside the look file' }),
    }),
  ])
  .meta({
    description:
      'the lamp: a name, { kelvin }, { spectrum } or { file }; left out: as neutral as the gate light',
  });

export const projectorSchema = z.strictObject({
  lamp: lampField.optional(),
  heatFilter: z
    .boolean()
    .default(false)
    .meta({ description: 'whether a heat-absorbing glass stands before the lamp' }),
  flare: numberField(0, 0.1, 0, 'veiling flare as a share of the open gate light'),
});

export type Projector = z.output<typeof projectorSchema>;
type LampChoice = NonNullable<Projector['lamp']>;

function lampSpectrum(lamp: LampChoice): Spectrum {
  if (typeof lamp === 'string') return lamps[lamp].spectrum;
  if ('kelvin' in lamp) return planck(lamp.kelvin);
  if ('spectrum' in lamp)
    return resampleToGrid(lamp.spectrum.startNm, lamp.spectrum.stepNm, lamp.spectrum.values);
  throw new Error(`the lamp file ${lamp.file} was not read before the look was compiled`);
}

/** The light on the screen without film. Without a lamp it is the gate light. */
export function projectorLight({ lamp, heatFilter }: Projector): FilmLight {
  if (lamp === undefined) return gateLight;
  const power = lampSpectrum(lamp);
  return filmLight(heatFilter ? behindHeatFilter(power) : power);
}

/** The film before the lamp; linear BT.2020 balanced to the lamp's open gate. */
export const compileLamp = (light: FilmLight, dyes: DyeSetName, make?: MakeDyeModel): Run[] =>
  light === gateLight ? [] : [relight(dyeSets[dyes], light, make)];

/** Stray light over the whole screen. */
export const compileFlare = (flare: number): Run[] => (flare > 0 ? [flareRun(flare)] : []);
