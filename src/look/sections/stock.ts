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

/** Whether time did anything. */
export const isAged = ({ loss, stain }: Stock): boolean =>
  [...Object.values(loss), ...Object.values(stain)].some((value) => value !== 0);

/** Undoes what time did, or nothing where nothing is asked. */
export function compileStock(stock: Stock, make?: MakeDyeModel): Run[] {
  const { dyes, loss, stain } = stock;
  return isAged(stock) ? [restoreStock({ dyes: dyeSets[dyes], loss, stain }, make)] : [];
}
