import { standardDaylight } from './daylight.js';

export const d50 = standardDaylight(5000);
