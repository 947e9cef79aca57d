import { cameraLog } from './camera-log.js';

/** Codes of 10 bits and what they mean; densities are printing densities of a negative. */
const top = 1023;
const blackCode = 95;
const whiteCode = 685;
const densityPerCode = 0.002;
const filmGamma = 0.6;

const exposurePerCode = densityPerCode / filmGamma;
const black = 10 ** ((blackCode - whiteCode) * exposurePerCode);

/** The 10-bit printing-density code of film scans: 0.002 density a code, black at 95, diffuse white at 685. */
export const printingDensityLog = cameraLog(
  {
    base: 10,
    logSideSlope: 1 / (exposurePerCode * top),
    logSideOffset: whiteCode / top,
    linSideSlope: 1 - black,
    linSideOffset: black,
  },
  {
    title: 'printing density, 10-bit log',
    source: 'common practice after SMPTE RP 180 and ST 268: black 95, white 685, film gamma 0.6',
  },
);
