import { describe, expect, it } from 'vitest';
import { cameraLogChecks } from '../../../shared/check-values/camera-log.js';
import { cameraLog, type CameraLogParameters } from '../../../src/colour/transfer-functions/camera-log.js';
import { InputError } from '../../../src/errors/input-error.js';
import { inverse, printed } from '../../tolerances.js';

describe.each(cameraLogChecks)('camera log: $name', ({ parameters, decimals, rows }) => {
  const curve = cameraLog(parameters);

  it.each(rows)('light %s has signal %s', (light, signal) => {
    expect(Math.abs(curve.encode(light) - signal)).toBeLessThan(printed(decimals));
    expect(Math.abs(curve.decode(curve.encode(light)) - light)).toBeLessThan(inverse * Math.max(1, light));
  });

  it('has one value and one slope where line and logarithm meet', () => {
    const { linSideBreak, linSideOffset = 0, linSideSlope = 1 } = parameters;
    const meeting = linSideBreak ?? (2 ** -24 - linSideOffset) / linSideSlope;
    const h = linSideBreak === undefined ? 1e-12 : 1e-7;
    const [below, at, above] = [-h, 0, h].map((step) => curve.encode(meeting + step));
    expect((above - at) / (at - below)).toBeCloseTo(1, 3);
  });
});

describe('parameters', () => {
  it('have the defaults of the format: the logarithm to base 2', () => {
    const curve = cameraLog({});
    expect(curve.encode(8)).toBeCloseTo(3, 14);
    expect(curve.decode(-2)).toBeCloseTo(0.25, 14);
    expect(cameraLog({ base: undefined, linSideBreak: undefined }).encode(8)).toBeCloseTo(3, 14);
  });

  it('allow a line of its own slope, which meets the logarithm in value', () => {
    const curve = cameraLog({ linSideBreak: 0.25, linearSlope: 3 });
    expect(curve.encode(0.25)).toBeCloseTo(-2, 14);
    expect(curve.encode(0)).toBeCloseTo(-2.75, 14);
    expect(curve.decode(-2.75)).toBeCloseTo(0, 14);
  });

  it('may turn both slopes, or take a base below 1, as long as signal rises with light', () => {
    const turned = cameraLog({ base: 0.5, logSideSlope: -1 });
    expect(turned.encode(8)).toBeCloseTo(3, 14);
  });

  const refused: [string, CameraLogParameters][] = [
    ['base', { base: 1 }],
    ['base', { base: 0 }],
    ['base', { base: -10 }],
    ['base', { base: NaN }],
    ['logSideSlope', { logSideSlope: 0 }],
    ['logSideSlope', { logSideSlope: -0.25 }],
    ['logSideSlope', { linSideSlope: 0 }],
    ['linSideOffset', { linSideOffset: Infinity }],
    ['linSideBreak', { linSideBreak: 0 }],
    ['linSideBreak', { linSideBreak: -0.1, linSideOffset: 0.05 }],
    ['linearSlope', { linearSlope: 1 }],
    ['linearSlope', { linSideBreak: 0.01, linearSlope: 0 }],
    ['linearSlope', { linSideBreak: 0.01, linearSlope: -4 }],
  ];
  it.each(refused)('%s is named in the refusal of %o', (field, parameters) => {
    let error: unknown;
    try {
      cameraLog(parameters);
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).problems.map((problem) => problem.field)).toEqual([field]);
  });

  it('are refused all at once', () => {
    expect(() => cameraLog({ base: 1, linSideBreak: -1, linearSlope: -1 })).toThrow(
      /base.*;.*break.*;.*rise/,
    );
  });
});

describe('a log without a break', () => {
  const curve = cameraLog({ base: 10, logSideSlope: 0.25, logSideOffset: 0.4 });

  it('is log down to 24 stops below 1 and a line below, so black and less stay finite', () => {
    expect(curve.encode(2 ** -23)).toBeCloseTo(0.4 + 0.25 * Math.log10(2 ** -23), 14);
    expect(Number.isFinite(curve.encode(0))).toBe(true);
    expect(curve.encode(-0.01)).toBeLessThan(curve.encode(0));
    expect(curve.decode(curve.encode(-0.01))).toBeCloseTo(-0.01, 12);
  });
});
