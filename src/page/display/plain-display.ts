import type { ApplyEngine } from '../../lut/engine/engine.js';
import type { Lattice } from '../../lut/lattice.js';
import { type Signal, type Signals, toScreen } from '../../jobs/signal.js';
import type { Level } from '../worker/levels.js';
import type { Display, Scene, Tile } from './display.js';
import { signalCodeLimits } from './code-limits.js';

/** Larger stills are shown from a smaller level: without the graphics part every pixel costs. */
const most = 1400;

interface Table {
  lattice: Lattice;
  signals: Signals;
  /** The still as the table says it was written, and through the table, as the screen shows it; made when first drawn. */
  recording?: OffscreenCanvas;
  seen?: OffscreenCanvas;
  marked?: OffscreenCanvas;
}

const unit = { domainMin: [0, 0, 0], domainMax: [1, 1, 1] } as const;

function onScreen(codes: Uint8Array, signal: Signal): Uint8ClampedArray<ArrayBuffer> {
  const out = new Uint8ClampedArray(codes);
  const run = toScreen(signal);
  if (run === undefined) return out;
  const rgb = new Float64Array(3);
  for (let i = 0; i < out.length; i += 4) {
    for (let c = 0; c < 3; c++) rgb[c] = codes[i + c] / 255;
    run(rgb, 1);
    for (let c = 0; c < 3; c++) out[i + c] = Math.round(255 * rgb[c]);
  }
  return out;
}

function canvasOf(pixels: Uint8ClampedArray<ArrayBuffer>, { width, height }: Level): OffscreenCanvas {
  const canvas = new OffscreenCanvas(width, height);
  canvas.getContext('2d')!.putImageData(new ImageData(pixels, width, height), 0, 0);
  return canvas;
}

/** Marks as the other display draws them, by the pixels of the still. */
function mark(
  pixels: Uint8ClampedArray,
  before: Uint8Array,
  after: Uint8Array,
  signals: Signals,
  width: number,
) {
  const [black0, white0, black1, white1] = signalCodeLimits(signals, false).map((limit) => 255 * limit);
  const set = (at: number, ...ink: number[]) => pixels.set(ink, at);
  for (let i = 0, pixel = 0; i < after.length; i += 4, pixel++) {
    const [x, y] = [pixel % width, Math.floor(pixel / width)];
    const white = [0, 1, 2].some((c) => after[i + c] >= white1 && before[i + c] < white0);
    const isBlack = after[i] <= black1 && after[i + 1] <= black1 && after[i + 2] <= black1;
    const wasBlack = before[i] <= black0 && before[i + 1] <= black0 && before[i + 2] <= black0;
    if (white && (x + y) % 8 < 3) set(i, 128, 13, 89);
    else if (isBlack && !wasBlack && y % 6 < 2 && (x + (y % 12 < 6 ? 0 : 3)) % 6 < 2) set(i, 115, 219, 230);
  }
}

/** The display without WebGL2: pixel by pixel, from a smaller level of large stills. */
export function plainDisplay(canvas: OffscreenCanvas, engine: ApplyEngine): Display {
  const context = canvas.getContext('2d', { alpha: false })!;
  const tables = new Map<string, Table>();
  let still: Level | undefined;

  function forget(): void {
    for (const table of tables.values()) table.recording = table.seen = table.marked = undefined;
  }

  function recorded(table: Table): OffscreenCanvas {
    const codes = still!.data as Uint8Array;
    return (table.recording ??= canvasOf(onScreen(codes, table.signals.input), still!));
  }

  function through(table: Table, marks: boolean): OffscreenCanvas {
    const kept = marks ? table.marked : table.seen;
    if (kept !== undefined) return kept;
    const codes = still!.data as Uint8Array;
    const after = new Uint8Array(codes.length);
    engine.apply(table.lattice, codes, after, 4);
    const pixels = onScreen(after, table.signals.output);
    if (marks) mark(pixels, codes, after, table.signals, still!.width);
    const made = canvasOf(pixels, still!);
    table[marks ? 'marked' : 'seen'] = made;
    return made;
  }

  function place(image: OffscreenCanvas, { picture }: Tile, { turn }: Scene): void {
    const { width, height } = image;
    const [w, h] = turn.transposed ? [height, width] : [width, height];
    context.save();
    context.translate(picture.x, picture.y);
    context.scale(picture.width / w, picture.height / h);
    // What is stored, mirrored first, then rows and columns exchanged.
    if (turn.transposed) context.transform(0, 1, 1, 0, 0, 0);
    context.translate(turn.mirrorX ? width : 0, turn.mirrorY ? height : 0);
    context.scale(turn.mirrorX ? -1 : 1, turn.mirrorY ? -1 : 1);
    context.imageSmoothingEnabled = picture.width / w < 1.5;
    context.drawImage(image, 0, 0);
    context.restore();
  }

  function clipTo(x: number, y: number, width: number, height: number): void {
    context.beginPath();
    context.rect(x, y, Math.max(0, width), height);
    context.clip();
  }

  function drawTile(tile: Tile, scene: Scene): void {
    const { box, splitX } = tile;
    // Until a table is there, the first stands in for it; before any is, nothing can be shown.
    const table = tables.get(tile.slot) ?? [...tables.values()][0];
    if (table === undefined) return;
    context.save();
    clipTo(box.x, box.y, box.width, box.height);
    place(tile.isRecording ? recorded(table) : through(table, tile.marks), tile, scene);
    if (splitX !== undefined) {
      clipTo(box.x, box.y, splitX - box.x, box.height);
      place(recorded(table), tile, scene);
    }
    context.restore();
  }

  return {
    kind: 'plain',
    wants: { halfFloats: false, most },
    setStill: async ([level], progress) => {
      still = level;
      forget();
      progress();
    },
    setTable: (slot, { size, values }, signals) => {
      tables.set(slot, {
        lattice: { kind: '3d', size, ...unit, values: Float64Array.from(values) },
        signals,
      });
    },
    dropTable: (slot) => tables.delete(slot),
    resize: (width, height) => Object.assign(canvas, { width, height }),
    draw: (scene) => {
      const grey = Math.round(255 * scene.bed);
      context.fillStyle = `rgb(${grey} ${grey} ${grey})`;
      context.fillRect(0, 0, canvas.width, canvas.height);
      if (still !== undefined) for (const tile of scene.tiles) drawTile(tile, scene);
    },
  };
}
