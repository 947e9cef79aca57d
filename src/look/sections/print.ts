import { printRun } from '../../film/printing.js';
import type { Run } from '../../maths/matrix3.js';
import { z } from 'zod';
import { numberField, redGreenBlue } from './section.js';

export const printSchema = z.strictObject({
  exposureStops: numberField(-4, 4, 0, 'exposure in stops, positive is lighter'),
  printerPoints: redGreenBlue(
    -50,
    50,
    'printer points of 0.025 log exposure, positive is lighter in that colour',
  ),
  contrast: numberField(0.2, 3, 1, 'slope of density about mid-grey (18 %), 1 is unchanged'),
  saturation: numberField(0, 3, 1, 'distance of colours from grey, 1 is unchanged'),
});

export type Print = z.output<typeof printSchema>;

export function compilePrint(print: Print): Run[] {
  const { red, green, blue } = print.printerPoints;
  const idle =
    print.exposureStops === 0 && print.contrast === 1 && print.saturation === 1 && !(red || green || blue);
  return idle ? [] : [printRun(print)];
}
