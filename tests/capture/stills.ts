import { transferFunctions } from '../../src/colour/transfer-functions/index.js';
import type { Triple } from '../../src/maths/matrix3.js';
import { normalRandom, seededRandom } from '../../src/maths/random.js';
import { lastCode, makePicture, type Picture } from '../../src/picture/picture.js';

export interface StillMaking {
  readonly width?: number;
  readonly height?: number;
  readonly bits?: 8 | 16;
  /** Linear light to signal; sRGB when left out. */
  readonly encode?: (light: number) => number;
  /** Share of the scale at which the camera's channels end. */
  readonly ceiling?: number;
  /** Deviation of normal noise, as a share of the light, a new draw for every pixel and channel. */
  readonly noise?: number;
  readonly seed?: number;
}

/** A still as a camera would write it: linear light by place (shares of the sides, at the middle of each pixel), RGB. */
export function makeStill(lightAt: (x: number, y: number) => Triple, making: StillMaking = {}): Picture {
  const { width = 320, height = 240, bits = 16, encode = transferFunctions.srgb.encode } = making;
  const { ceiling = 1, noise = 0, seed = 8 } = making;
  const random = seededRandom(seed);
  const still = makePicture(width, height, { channels: 3, bits });
  for (let i = 0; i < width * height; i++) {
    const light = lightAt(((i % width) + 0.5) / width, (Math.floor(i / width) + 0.5) / height);
    for (let c = 0; c < 3; c++) {
      const drawn = noise === 0 ? light[c] : light[c] * (1 + noise * normalRandom(random));
      const signal = Math.min(ceiling, Math.max(0, encode(drawn)));
      still.data[3 * i + c] = Math.round(lastCode(bits) * signal);
    }
  }
  return still;
}

export const grey = (light: number): Triple => [light, light, light];
