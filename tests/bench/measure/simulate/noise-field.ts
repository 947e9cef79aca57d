const hash = (x: number, y: number, seed: number): number => {
  let h = Math.imul(x, 374761393) ^ Math.imul(y, 668265263) ^ Math.imul(seed, 2246822519);
  h = Math.imul(h ^ (h >>> 13), 1274126177);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
};

function valueNoise(x: number, y: number, seed: number): number {
  const [ix, iy] = [Math.floor(x), Math.floor(y)];
  const ease = (t: number) => t * t * (3 - 2 * t);
  const [u, v] = [ease(x - ix), ease(y - iy)];
  const top = hash(ix, iy, seed) * (1 - u) + hash(ix + 1, iy, seed) * u;
  const bottom = hash(ix, iy + 1, seed) * (1 - u) + hash(ix + 1, iy + 1, seed) * u;
  return top * (1 - v) + bottom * v;
}

/** Fractal noise with the 1/f amplitude of natural pictures, mean 0, deviation about 1. `scale`: cells over the unit square. */
export function fractalNoise(x: number, y: number, scale: number, seed: number, octaves = 5): number {
  let [sum, amplitude, power] = [0, 1, 0];
  for (let o = 0; o < octaves; o++) {
    sum += amplitude * (valueNoise(x * scale, y * scale, seed + 101 * o) - 0.5);
    power += amplitude * amplitude;
    scale *= 2.03;
    amplitude *= 0.62;
  }
  return sum / (0.22 * Math.sqrt(power));
}
