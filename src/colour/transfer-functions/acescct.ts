import { cameraLog } from './camera-log.js';

/** ACEScct: log2 of light above 2^-7, its tangent below. */
export const acescct = cameraLog(
  {
    base: 2,
    logSideSlope: 1 / 17.52,
    logSideOffset: 9.72 / 17.52,
    linSideBreak: 2 ** -7,
    linearSlope: 10.5402377416545,
  },
  { title: 'ACEScct', source: 'Academy S-2016-001' },
);
