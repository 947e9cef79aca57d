import { seededRandom } from '../../../src/maths/random.js';
import { makePicture, type Picture } from '../../../src/picture/picture.js';

export const [width, height] = [160, 120];

type Colour = readonly [number, number, number];

/** A picture of 16 bits of what `colour` says of each pixel, with the grain of the film. */
export function draw(colour: (x: number, y: number) => Colour, seed = 1): Picture {
  const random = seededRandom(seed);
  const picture = makePicture(width, height, { channels: 3, bits: 16 });
  for (let i = 0; i < width * height; i++) {
    const grain = 0.02 * (random() - 0.5);
    colour(i % width, Math.floor(i / width)).forEach((level, c) => {
      picture.data[3 * i + c] = Math.round(65535 * Math.min(1, Math.max(0, level + grain)));
    });
  }
  return picture;
}

/** Patches of colour with sharp edges, different for each `kind`, moved by `shift` pixels; `soft` edges are blurred. */
export function scene(kind: number, shift = 0, { soft = 0, light = 1, seed = 1 } = {}): Picture {
  const random = seededRandom(1000 + kind);
  const patches = Array.from({ length: 60 }, () => Array.from({ length: 3 }, () => 0.1 + 0.75 * random()));
  const patch = (x: number, y: number) => {
    const column = Math.floor((((x + shift) % width) + width) / 16) % 10;
    return patches[10 * (Math.floor(y / 20) % 6) + column];
  };
  return draw((x, y) => {
    const colour = [0, 0, 0];
    let count = 0;
    for (let dx = -soft; dx <= soft; dx++, count++)
      patch(x + dx, y).forEach((level, c) => (colour[c] += level));
    return colour.map((sum) => (light * sum) / count) as unknown as Colour;
  }, seed);
}
