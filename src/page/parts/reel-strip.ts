import { html, type TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import { repeat } from 'lit-html/directives/repeat.js';
import { plainEngine } from '../../lut/engine/engine.js';
import { toScreen } from '../../jobs/signal.js';
import { changeDepth, expandGrey, type Picture } from '../../picture/picture.js';
import { turnUpright } from '../../picture/orientation.js';
import { coarseSize } from '../coarse.js';
import type { Shown } from '../engine/findings.js';
import { chooseFiles } from '../files.js';
import { removeStill } from '../state/actions.js';
import type { Still } from '../state/sheet.js';
import { orientationOf, type Turn } from '../state/turn.js';
import { drawing, drawings } from './icons.js';
import type { Page } from './parts.js';

/** A small picture through a table, as the screen shows it. */
function seen(picture: Picture, shown: Shown | undefined): Picture {
  const small = changeDepth(expandGrey(picture), 8);
  if (shown?.lattice === undefined) return small;
  const { size, values } = shown.lattice;
  const data = new Uint8Array(small.data.length);
  const unit = { domainMin: [0, 0, 0], domainMax: [1, 1, 1] } as const;
  const lattice = { kind: '3d', size, values: Float64Array.from(values), ...unit } as const;
  plainEngine.apply(lattice, small.data, data, small.channels as 3 | 4);
  const screen = toScreen(shown.signals.output);
  if (screen === undefined) return { ...small, data };
  const codes = Float64Array.from({ length: 3 * small.width * small.height }, (_, i) => {
    return data[Math.floor(i / 3) * small.channels + (i % 3)] / 255;
  });
  screen(codes, codes.length / 3);
  codes.forEach((code, i) => (data[Math.floor(i / 3) * small.channels + (i % 3)] = Math.round(255 * code)));
  return { ...small, data };
}

/** Draws a picture into a canvas of its size. */
export function paint(canvas: HTMLCanvasElement, { width, height, channels, data }: Picture): void {
  const pixels = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let from = 0, to = 0; from < data.length; from += channels, to += 4)
    for (let c = 0; c < Math.min(channels, 4); c++) pixels[to + c] = data[from + c];
  Object.assign(canvas, { width, height });
  canvas.getContext('2d')!.putImageData(new ImageData(pixels, width, height), 0, 0);
}

/** What a thumb was drawn from: drawn again only when that changes. */
const drawn = new WeakMap<HTMLCanvasElement, readonly unknown[]>();

function paintThumb(
  element: Element | undefined,
  thumb: Picture,
  shown: Shown | undefined,
  turn: Turn,
): void {
  if (!(element instanceof HTMLCanvasElement)) return;
  const from = [thumb, shown?.lattice, orientationOf(turn)];
  if (drawn.get(element)?.every((one, i) => one === from[i])) return;
  drawn.set(element, from);
  paint(element, turnUpright(seen(thumb, shown), orientationOf(turn)));
}

function frame(page: Page, still: Still, number: number): TemplateResult {
  const { store, findings } = page;
  const thumb = findings.thumbs.get(still.id);
  const shown = findings.shown.get(store.view.card);
  // While a control moves the big picture follows; the strip waits for the table at rest.
  const settled = shown?.lattice?.size === coarseSize ? undefined : shown;
  const here = store.view.still === still.id;
  const { turn } = store.sheet();
  return html`<li>
    <button
      class="frame"
      aria-current=${here ? 'true' : 'false'}
      title="${still.name}: ${still.width} × ${still.height}, ${still.bits} bit"
      @click=${() => store.look({ still: still.id })}
    >
      <span class="unseen">Frame ${number}: ${still.name}</span>
      <canvas
        aria-hidden="true"
        ${ref((element) => thumb && (settled || !shown) && paintThumb(element, thumb, settled, turn))}
      ></canvas>
      <span class="number" aria-hidden="true">${number}</span>
    </button>
    <button
      class="icon"
      aria-label="Take frame ${number}, ${still.name}, off the reel"
      @click=${() => removeStill(store, still.id)}
    >
      ${drawing(drawings.remove)}
    </button>
  </li>`;
}

/** The frames of the reel, as a strip of film. */
export function reelStrip(page: Page): TemplateResult {
  const { stills } = page.store.sheet();
  return html`<footer class="reel" aria-label="The frames of the reel">
    <ol>
      ${repeat(
        stills,
        ({ id }) => id,
        (still, i) => frame(page, still, i + 1),
      )}
      <li>
        <button class="frame add" @click=${() => chooseFiles(page)}>
          ${drawing(drawings.closer)}<span>Open stills of the reel</span>
        </button>
      </li>
    </ol>
  </footer>`;
}
