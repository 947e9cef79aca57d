/** Red, green and blue exposures of a frame, interleaved, row by row. */
export interface ExposedFrame {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/** Light scattered within film and lens: share spread a little way (halation, most in the red), share spread evenly. */
const halation = [0.045, 0.022, 0.012] as const;
const halationRadius = 0.018;
const veil = 0.004;
/** Radius of the lens's softness, as a share of the frame's height, and darkening in the corners. */
const softness = 0.0009;
const vignette = 0.22;

function gaussianKernel(radius: number): Float64Array {
  const reach = Math.max(1, Math.ceil(2.5 * radius));
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-0.5 * ((i - reach) / radius) ** 2),
  );
  const whole = kernel.reduce((sum, value) => sum + value, 0);
  return kernel.map((value) => value / whole);
}

/** Blurs rows of interleaved r g b and writes them as columns; doing it twice blurs both ways and turns back. */
function blurTurned(source: Float32Array, width: number, height: number, kernel: Float64Array): Float32Array {
  const out = new Float32Array(source.length);
  const reach = (kernel.length - 1) / 2;
  for (let y = 0; y < height; y++) {
    const row = 3 * y * width;
    for (let x = 0; x < width; x++) {
      let [r, g, b] = [0, 0, 0];
      for (let k = -reach; k <= reach; k++) {
        const at = row + 3 * Math.min(width - 1, Math.max(0, x + k));
        const weight = kernel[k + reach];
        r += weight * source[at];
        g += weight * source[at + 1];
        b += weight * source[at + 2];
      }
      const to = 3 * (x * height + y);
      out[to] = r;
      out[to + 1] = g;
      out[to + 2] = b;
    }
  }
  return out;
}

function blur({ width, height, light }: ExposedFrame, radius: number): ExposedFrame {
  const kernel = gaussianKernel(radius);
  return {
    width,
    height,
    light: blurTurned(blurTurned(light, width, height, kernel), height, width, kernel),
  };
}

/** The frame made smaller by a whole factor, each pixel the mean of those it covers. */
function shrink({ width, height, light }: ExposedFrame, factor: number): ExposedFrame {
  const [w, h] = [Math.ceil(width / factor), Math.ceil(height / factor)];
  const out = new Float32Array(3 * w * h);
  const counts = new Float32Array(w * h);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at += 3) {
      const to = Math.floor(y / factor) * w + Math.floor(x / factor);
      counts[to]++;
      for (let k = 0; k < 3; k++) out[3 * to + k] += light[at + k];
    }
  return { width: w, height: h, light: out.map((value, i) => value / counts[Math.floor(i / 3)]) };
}

/** A place between two of `count` points, `factor` pixels apart: the first of them and the way to the second. */
function between(pixel: number, factor: number, count: number): readonly [index: number, share: number] {
  const at = (pixel + 0.5) / factor - 0.5;
  const index = Math.min(Math.max(0, count - 2), Math.max(0, Math.floor(at)));
  return [index, Math.min(1, Math.max(0, at - index))];
}

/** Grows a small frame to the given size, linear between its pixels; each value is handed over once, row by row. */
function eachGrown(
  small: ExposedFrame,
  factor: number,
  { width, height }: ExposedFrame,
  visit: (at: number, value: number) => void,
): void {
  const right = small.width > 1 ? 3 : 0;
  const down = small.height > 1 ? 3 * small.width : 0;
  const columns = Array.from({ length: width }, (_, x) => between(x, factor, small.width));
  for (let y = 0, at = 0; y < height; y++) {
    const [row, lower] = between(y, factor, small.height);
    for (let x = 0; x < width; x++) {
      const i = 3 * (row * small.width + columns[x][0]);
      const share = columns[x][1];
      for (let k = 0; k < 3; k++, at++) {
        const above = small.light[i + k] + share * (small.light[i + right + k] - small.light[i + k]);
        const j = i + down + k;
        const below = small.light[j] + share * (small.light[j + right] - small.light[j]);
        visit(at, above + lower * (below - above));
      }
    }
  }
}

/** What lens and film make of a scene's light: a little softness, halation around the brightest parts, veil, vignette. */
export function throughLens(frame: ExposedFrame): ExposedFrame {
  const { width, height } = frame;
  const soft = blur(frame, Math.max(0.3, softness * height));
  const factor = Math.max(1, Math.round(height / 120));
  const wide = blur(shrink(frame, factor), Math.max(0.3, (halationRadius * height) / factor));
  const mean = wide.light.reduce((sum, value) => sum + value, 0) / wide.light.length;
  const out = soft.light;
  eachGrown(wide, factor, frame, (at, around) => {
    const k = at % 3;
    out[at] = (1 - halation[k] - veil) * out[at] + halation[k] * around + veil * mean;
  });
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const u = (2 * x) / width - 1;
      const v = (2 * y) / height - 1;
      const corner = 1 - vignette * (0.5 * (u * u + v * v)) ** 1.5;
      for (let k = 0; k < 3; k++, at++) out[at] *= corner;
    }
  return { width, height, light: out };
}
