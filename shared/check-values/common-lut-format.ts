import { cameraLogChecks } from './camera-log.js';

/** The Log node of the Common LUT Format, with the values of its curves; inputs and outputs are normalised (32f). */
export const logNodes = cameraLogChecks.map(({ parameters, rows }) =>
  'linSideBreak' in parameters
    ? { style: 'cameraLinToLog', inverse: 'cameraLogToLin', parameters, rows }
    : { style: 'linToLog', inverse: 'logToLin', parameters, rows },
);

/** What integer codes are divided by. */
export const lastCodes = { '8i': 255, '10i': 1023, '12i': 4095, '16i': 65535, '16f': 1, '32f': 1 } as const;
