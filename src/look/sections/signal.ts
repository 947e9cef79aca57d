import { InputError } from '../../errors/input-error.js';
import { cameraLog } from '../../colour/transfer-functions/camera-log.js';
import { transferFunctions } from '../../colour/transfer-functions/index.js';
import type { TransferFunction } from '../../colour/transfer-functions/transfer-function.js';
import { customPrimaries } from '../../colour/primaries/custom-primaries.js';
import { primaries, type Primaries } from '../../colour/primaries/index.js';
import { z } from 'zod';
import { nameField, namesOf } from './section.js';

const finite = (description: string) => z.number().min(-1e6).max(1e6).meta({ description });

/** Lets the function that will use a value say what is wrong with it, field by field. */
const refusedBy =
  <Value>(use: (value: Value) => unknown) =>
  (value: Value, context: z.core.$RefinementCtx): void => {
    try {
      use(value);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      for (const { field, what, allowed } of error.problems)
        context.addIssue({
          code: 'custom',
          path: field === undefined ? [] : [field],
          message: what,
          params: { allowed },
        });
    }
  };

/** A camera's published log curve, typed in: the parameters of the camera log of SMPTE ST 2136-1. */
const cameraLogSchema = z
  .strictObject({
    base: z.number().min(1.0001).max(1000).default(2).meta({ description: 'base of the logarithm' }),
    logSideSlope: z.number().min(1e-6).max(1e6).default(1).meta({ description: 'slope on the signal side' }),
    logSideOffset: finite('offset on the signal side').default(0),
    linSideSlope: z.number().min(1e-6).max(1e6).default(1).meta({ description: 'slope on the light side' }),
    linSideOffset: finite('offset on the light side').default(0),
    linSideBreak: finite(
      'linear light at and below which the curve is a straight line; left out: a curve all the way down',
    ).optional(),
    linearSlope: z
      .number()
      .min(1e-6)
      .max(1e6)
      .optional()
      .meta({ description: 'slope of the straight line; left out: that of the curve at the break' }),
  })
  .superRefine(refusedBy(cameraLog))
  .meta({ description: 'a custom camera log curve' });

const chromaticity = z
  .tuple([z.number().min(-0.2).max(1), z.number().min(-0.2).max(1.1)])
  .meta({ description: 'CIE 1931 x and y' });

const whitePoint = z
  .tuple([z.number().min(0.1).max(0.7), z.number().min(0.1).max(0.7)])
  .meta({ description: 'CIE 1931 x and y' });

const customPrimariesSchema = z
  .strictObject({ red: chromaticity, green: chromaticity, blue: chromaticity, white: whitePoint })
  .superRefine(refusedBy(customPrimaries))
  .meta({ description: 'custom chromaticities' });

export const encodingField = (description: string) =>
  z.union([nameField(namesOf(transferFunctions), description), cameraLogSchema]).meta({ description });

export const primariesField = (description: string) =>
  z.union([nameField(namesOf(primaries), description), customPrimariesSchema]).meta({ description });

export const rangeField = (description: string) => nameField(['full', 'legal'] as const, description);

export type Encoding = z.infer<ReturnType<typeof encodingField>>;
export type PrimariesChoice = z.infer<ReturnType<typeof primariesField>>;

/** The transfer function that a look names or spells out. */
export function transferFunctionOf(encoding: Encoding): TransferFunction {
  return typeof encoding === 'string' ? transferFunctions[encoding] : cameraLog(encoding);
}

/** The primaries that a look names or spells out. */
export function primariesOf(choice: PrimariesChoice): Primaries {
  if (typeof choice === 'string') return primaries[choice];
  return customPrimaries(choice, { source: 'the look file' });
}
