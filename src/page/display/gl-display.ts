import { signalCodeLimits } from './code-limits.js';
import type { Display, Scene, Tile } from './display.js';
import { pictureProgram, plainTexture } from './gl-tools.js';
import { decodeEntries, type ScreenConversion, screenConversion } from './screen-conversion.js';
import type { Signals } from '../../jobs/signal.js';
import type { Level } from '../worker/levels.js';

interface Table {
  readonly texture: WebGLTexture;
  size: number;
  signals: Signals;
  signalsText: string;
  before?: ScreenConversion;
  after?: ScreenConversion;
  readonly decodeBefore: WebGLTexture;
  readonly decodeAfter: WebGLTexture;
}

/** Bytes of a still handed over at a time, so that no frame waits long for it. */
const sliceBytes = 3_000_000;

const nextFrame = () => new Promise((done) => requestAnimationFrame(done));

/** Texture units by what they hold. */
const units = { still: 0, table: 1, decodeBefore: 2, decodeAfter: 3 } as const;

/**
 * The display by WebGL2: the still as a texture, each look as a 3D texture.
 * @returns undefined where the browser has no WebGL2
 */
export function glDisplay(canvas: OffscreenCanvas): Display | undefined {
  const gl = canvas.getContext('webgl2', { alpha: false, antialias: false, preserveDrawingBuffer: true });
  if (gl === null) return undefined;
  const { program, place } = pictureProgram(gl);
  const tables = new Map<string, Table>();
  let still:
    | { texture: WebGLTexture; width: number; height: number; levels: number; least: number; deep: boolean }
    | undefined;
  let loading = 0;
  gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);

  const most = Math.min(gl.getParameter(gl.MAX_TEXTURE_SIZE) as number, 16384);

  function newStillTexture(levels: readonly Level[]): NonNullable<typeof still> {
    const deep = levels[0].data instanceof Uint16Array;
    const texture = gl!.createTexture();
    gl!.activeTexture(gl!.TEXTURE0);
    gl!.bindTexture(gl!.TEXTURE_2D, texture);
    const format = deep ? gl!.RGBA16F : gl!.RGBA8;
    gl!.texStorage2D(gl!.TEXTURE_2D, levels.length, format, levels[0].width, levels[0].height);
    gl!.texParameteri(gl!.TEXTURE_2D, gl!.TEXTURE_WRAP_S, gl!.CLAMP_TO_EDGE);
    gl!.texParameteri(gl!.TEXTURE_2D, gl!.TEXTURE_WRAP_T, gl!.CLAMP_TO_EDGE);
    gl!.texParameteri(gl!.TEXTURE_2D, gl!.TEXTURE_MIN_FILTER, gl!.LINEAR_MIPMAP_LINEAR);
    const { width, height } = levels[0];
    return { texture, width, height, levels: levels.length, least: levels.length - 1, deep };
  }

  function uploadRows(level: Level, index: number, from: number, to: number, deep: boolean): void {
    gl!.texSubImage2D(
      gl!.TEXTURE_2D,
      index,
      0,
      from,
      level.width,
      to - from,
      gl!.RGBA,
      deep ? gl!.HALF_FLOAT : gl!.UNSIGNED_BYTE,
      level.data.subarray(4 * from * level.width, 4 * to * level.width),
    );
  }

  async function setStill(levels: readonly Level[], progress: () => void): Promise<void> {
    const mine = ++loading;
    const next = newStillTexture(levels);
    const taken = () => mine !== loading;
    for (let index = levels.length - 1; index >= 0; index--) {
      const level = levels[index];
      const rows = Math.max(1, Math.floor(sliceBytes / (level.data.BYTES_PER_ELEMENT * 4 * level.width)));
      for (let from = 0; from < level.height; from += rows) {
        if (from > 0) await nextFrame();
        if (taken()) return gl!.deleteTexture(next.texture);
        gl!.activeTexture(gl!.TEXTURE0);
        gl!.bindTexture(gl!.TEXTURE_2D, next.texture);
        uploadRows(level, index, from, Math.min(level.height, from + rows), next.deep);
      }
      next.least = index;
      if (
        still !== next &&
        Math.max(level.width, level.height) >= Math.min(512, Math.max(next.width, next.height))
      ) {
        if (still !== undefined) gl!.deleteTexture(still.texture);
        still = next;
      }
      if (still === next) progress();
    }
  }

  function loadDecode(texture: WebGLTexture, conversion: ScreenConversion | undefined): void {
    if (conversion === undefined) return;
    gl!.bindTexture(gl!.TEXTURE_2D, texture);
    gl!.texImage2D(gl!.TEXTURE_2D, 0, gl!.R32F, decodeEntries, 1, 0, gl!.RED, gl!.FLOAT, conversion.decode);
  }

  function newTable(): Table {
    return {
      texture: plainTexture(gl!, gl!.TEXTURE_3D),
      size: 0,
      signals: undefined as never,
      signalsText: '',
      decodeBefore: plainTexture(gl!, gl!.TEXTURE_2D),
      decodeAfter: plainTexture(gl!, gl!.TEXTURE_2D),
    };
  }

  function setTable(...[slot, { size, values }, signals]: Parameters<Display['setTable']>): void {
    gl!.activeTexture(gl!.TEXTURE1);
    const table = tables.get(slot) ?? newTable();
    tables.set(slot, table);
    gl!.bindTexture(gl!.TEXTURE_3D, table.texture);
    gl!.texImage3D(gl!.TEXTURE_3D, 0, gl!.RGB32F, size, size, size, 0, gl!.RGB, gl!.FLOAT, values);
    table.size = size;
    const text = JSON.stringify(signals);
    if (text === table.signalsText) return;
    Object.assign(table, {
      signals,
      signalsText: text,
      before: screenConversion(signals.input),
      after: screenConversion(signals.output),
    });
    loadDecode(table.decodeBefore, table.before);
    loadDecode(table.decodeAfter, table.after);
  }

  function dropTable(slot: string): void {
    const table = tables.get(slot);
    if (table === undefined) return;
    for (const texture of [table.texture, table.decodeBefore, table.decodeAfter]) gl!.deleteTexture(texture);
    tables.delete(slot);
  }

  function bind(unit: number, target: number, texture: WebGLTexture | null, name: string): void {
    gl!.activeTexture(gl!.TEXTURE0 + unit);
    gl!.bindTexture(target, texture);
    gl!.uniform1i(place(name), unit);
  }

  /** Until a table is there, the first stands in for it. */
  const tableOf = (slot: string) => tables.get(slot) ?? [...tables.values()][0];

  function setConversion(side: 'Before' | 'After', conversion: ScreenConversion | undefined): void {
    gl!.uniform1i(place(`convert${side}`), conversion === undefined ? 0 : 1);
    // GLSL takes matrices column by column; the shader multiplies from the left, so that rows stay rows.
    if (conversion !== undefined) gl!.uniformMatrix3fv(place(`matrix${side}`), false, [...conversion.matrix]);
  }

  function drawTile(tile: Tile, { turn, bed }: Scene): void {
    const { box, picture } = tile;
    const table = tableOf(tile.slot);
    const seen = turn.transposed ? still!.height : still!.width;
    const scale = picture.width / seen;
    gl!.scissor(box.x, canvas.height - box.y - box.height, box.width, box.height);
    bind(units.still, gl!.TEXTURE_2D, still!.texture, 'still');
    const enlarged = scale >= 1.5 && still!.least === 0;
    gl!.texParameteri(gl!.TEXTURE_2D, gl!.TEXTURE_MAG_FILTER, enlarged ? gl!.NEAREST : gl!.LINEAR);
    bind(units.table, gl!.TEXTURE_3D, table?.texture ?? null, 'table');
    bind(units.decodeBefore, gl!.TEXTURE_2D, table?.decodeBefore ?? null, 'decodeBefore');
    bind(units.decodeAfter, gl!.TEXTURE_2D, table?.decodeAfter ?? null, 'decodeAfter');
    gl!.uniform4f(place('picture'), picture.x, picture.y, picture.width, picture.height);
    gl!.uniform1f(place('canvasHeight'), canvas.height);
    gl!.uniform3i(place('turn'), +turn.transposed, +turn.mirrorX, +turn.mirrorY);
    gl!.uniform1f(place('lod'), Math.max(still!.least, -Math.log2(scale)));
    gl!.uniform1i(place('tableSize'), tile.isRecording ? 0 : (table?.size ?? 0));
    gl!.uniform1f(place('splitX'), tile.splitX ?? -1);
    gl!.uniform1i(place('marks'), +tile.marks);
    if (table !== undefined) gl!.uniform4f(place('limits'), ...signalCodeLimits(table.signals, still!.deep));
    setConversion('Before', table?.before);
    setConversion('After', table?.after);
    gl!.uniform1f(place('bed'), bed);
    gl!.drawArrays(gl!.TRIANGLES, 0, 3);
  }

  return {
    kind: 'graphics',
    wants: { halfFloats: true, most },
    setStill,
    setTable,
    dropTable,
    resize: (width, height) => Object.assign(canvas, { width, height }),
    draw: (scene) => {
      gl.viewport(0, 0, canvas.width, canvas.height);
      gl.disable(gl.SCISSOR_TEST);
      gl.clearColor(scene.bed, scene.bed, scene.bed, 1);
      gl.clear(gl.COLOR_BUFFER_BIT);
      if (still === undefined) return;
      gl.enable(gl.SCISSOR_TEST);
      gl.useProgram(program);
      for (const tile of scene.tiles) drawTile(tile, scene);
    },
  };
}
