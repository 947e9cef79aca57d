import { primaries } from '../../colour/primaries/index.js';
import { rgbToRgb } from '../../colour/primaries/rgb-matrix.js';
import { fromFull, toFull } from '../../colour/signal-range.js';
import { type Run, transformRun3 } from '../../maths/matrix3.js';
import { z } from 'zod';
import { encodingField, primariesField, primariesOf, rangeField, transferFunctionOf } from './signal.js';

export const cameraSchema = z.strictObject({
  encoding: encodingField('transfer function the camera wrote with').default('srgb'),
  primaries: primariesField('primaries the camera wrote in').default('bt709'),
  range: rangeField('full or legal code values').default('full'),
  openGate: z
    .number()
    .min(0.0001)
    .max(100)
    .optional()
    .meta({ description: 'linear level of the light without film; left out: diffuse white of the encoding' }),
  flare: z.number().min(0).max(0.05).optional().meta({
    description:
      'stray light of the scan as a share of the open gate: dyes are read without it, the picture keeps it; left out: none',
  }),
});

export type Camera = z.output<typeof cameraSchema>;

/** Linear level of the light without film. */
export function openGateOf(camera: Pick<Camera, 'encoding' | 'openGate'>): number {
  return camera.openGate ?? transferFunctionOf(camera.encoding).whiteLight;
}

/** Code values 0..1 between which film lies: those of no light and of the open gate. */
export function codesOfFilm(camera: Pick<Camera, 'encoding' | 'range' | 'openGate'>): {
  none: number;
  openGate: number;
} {
  const { encode } = transferFunctionOf(camera.encoding);
  const code = (light: number) => Math.min(1, Math.max(0, fromFull(encode(light), camera.range)));
  return { none: code(0), openGate: code(openGateOf(camera)) };
}

/** Code values 0..1 -> linear BT.2020 relative to the open gate. */
export function readCamera(camera: Camera): Run {
  const { decode } = transferFunctionOf(camera.encoding);
  const openGate = openGateOf(camera);
  const toFilm = rgbToRgb(primariesOf(camera.primaries), primaries.bt2020);
  const lightOf = (code: number) => decode(toFull(code, camera.range)) / openGate;
  return (values, count) => {
    for (let channel = 0; channel < 3; channel++) {
      // In a lattice green and blue stay for a row: the colour before it had the same code.
      let [code, light] = [NaN, NaN];
      for (let i = channel; i < 3 * count; i += 3) {
        if (values[i] !== code) {
          code = values[i];
          light = lightOf(code);
        }
        values[i] = light;
      }
    }
    transformRun3(toFilm, values, count);
  };
}
