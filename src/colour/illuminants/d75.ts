import { standardDaylight } from './daylight.js';

export const d75 = standardDaylight(7500);
