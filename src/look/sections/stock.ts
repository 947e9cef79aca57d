import type { MakeDyeModel } from '../../film/dye-model.js';
import { dyeSets } from '../../film/dye-sets/index.js';
import { restoreStock } from '../../film/stock.js';
import type { Run } from '../../maths/matrix3.js';
import { z } from 'zod';
import { nameField, namesOf, numberField, redGreenBlue } from './section.js';

export const stockSchema = z.strictObject({
  dyes: nameField(namesOf(dyeSets), 'dye set of the stock').default('reversal-late'),
  loss: z
    .strictObject({
      cyan: numberField(0, 0.9, 0, 'share of the cyan dye that is gone'),
      magenta: numberField(0, 0.9, 0, 'share of the magenta dye that is gone'),
      yellow: numberField(0, 0.9, 0, 'share of the yellow dye that is gone'),
    })
    .prefault({})
    .meta({ description: 'share of each dye that is gone' }),
  stain: redGreenBlue(-0.2, 1, 'density added to the base'),
});

export type Stock = z.output<typeof stockSchema>;

/** Undoes what time did, or nothing where nothing is asked. */
export function compileStock({ dyes, loss, stain }: Stock, make?: MakeDyeModel): Run[] {
  const asked = [...Object.values(loss), ...Object.values(stain)].some((value) => value !== 0);
  return asked ? [restoreStock({ dyes: dyeSets[dyes], loss, stain }, make)] : [];
}
