import { standardDaylight } from './daylight.js';

export const d55 = standardDaylight(5500);
