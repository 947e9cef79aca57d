import { illuminantD65Table } from '../../../shared/tables/illuminant-d65.js';
import { resampleToGrid } from '../spectrum.js';
import type { Illuminant } from './illuminant.js';

/** The one daylight that the standard gives as a table and not by the formula. */
export const d65: Illuminant = {
  title: 'daylight D65',
  source: 'ISO 11664-2:2007',
  spectrum: resampleToGrid(illuminantD65Table.startNm, illuminantD65Table.stepNm, illuminantD65Table.values),
};
