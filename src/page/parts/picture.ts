import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { takenAs } from '../../jobs/taken-as.js';
import { chooseFiles, openDemoStill } from '../files.js';
import { cardName, type Still } from '../state/sheet.js';
import { mirroredAcross, mirroredDown, turnedRight } from '../state/turn.js';
import type { Comparison } from '../state/view.js';
import { type glassEvents, stillOf, zoomBy, zoomToPixels, zoomToWhole } from './glass.js';
import { drawing, drawings } from './icons.js';
import { hold, pictureKey, pictureKeyUp, zoomStep } from './keys.js';
import { rectangles } from './mark-boxes.js';
import type { Page } from './parts.js';
import { layout } from './tiles.js';
import { hundredths, styled } from './styled.js';

type Glass = ReturnType<typeof glassEvents>;

const comparisonWords: Readonly<Record<Comparison, string>> = {
  after: 'After',
  before: 'Before',
  split: 'Split',
  beside: 'Side by side',
  looks: 'All looks',
};

/** The handle of the split: dragged, or moved with the arrow keys. */
function splitHandle(page: Page, still: Still): TemplateResult | typeof nothing {
  const { store, sight, dialogs } = page;
  if (store.view.comparison !== 'split') return nothing;
  const [{ picture, box }] = layout(store.sheet(), store.view, still, sight, dialogs.holding).scene.tiles;
  const x = picture.x + store.view.split * picture.width;
  const scale = sight.element.clientWidth / sight.width;
  const set = (split: number) => store.look({ split: Math.min(1, Math.max(0, split)) });
  const drag = (event: PointerEvent) => {
    if ((event.buttons & 1) === 0) return;
    const { left } = sight.element.getBoundingClientRect();
    set(((event.clientX - left) / scale - picture.x) / picture.width);
  };
  const key = (event: KeyboardEvent) => {
    const step = { ArrowLeft: -0.02, ArrowRight: 0.02, Home: -1, End: 1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    set(store.view.split + step);
  };
  const shownX = Math.min(box.x + box.width, Math.max(box.x, x)) * scale;
  return html`<div
    class="split"
    role="slider"
    tabindex="0"
    aria-label="Split between before and after"
    aria-valuemin="0"
    aria-valuemax="100"
    aria-valuenow=${Math.round(100 * store.view.split)}
    aria-valuetext="before on the left ${Math.round(100 * store.view.split)} %"
    ${styled({ left: `${hundredths(shownX)}px` })}
    @pointerdown=${(event: PointerEvent) => (event.currentTarget as Element).setPointerCapture(event.pointerId)}
    @pointermove=${drag}
    @keydown=${key}
  ></div>`;
}

function captions(page: Page, still: Still): TemplateResult {
  const { store, sight, dialogs, findings } = page;
  const sheet = store.sheet();
  const { captions: shown } = layout(sheet, store.view, still, sight, dialogs.holding);
  const scale = sight.element.clientWidth / sight.width || 1;
  const words = ({ slot, isRecording }: (typeof shown)[number]) => {
    const card = sheet.cards.find(({ id }) => id === slot);
    const name = isRecording || card === undefined ? 'as recorded' : cardName(card);
    const split = store.view.comparison === 'split' ? 'as recorded | ' : '';
    // Side by side the recording's own caption says it.
    const isSaid = store.view.comparison === 'beside' && !isRecording;
    const input = isSaid ? undefined : findings.shown.get(slot)?.signals.input;
    return [`${split}${name}`, input === undefined ? '' : takenAs(input)].filter(Boolean).join(' – ');
  };
  return html`${shown.map(
    (seen) =>
      html`<span
        class="caption ${seen.slot === store.view.card && !seen.isRecording && shown.length > 1 ? 'here' : ''}"
        ${styled({
          left: `${hundredths(seen.box.x * scale)}px`,
          top: `${hundredths(seen.box.y * scale)}px`,
          'max-width': `${hundredths(seen.box.width * scale)}px`,
        })}
        title=${words(seen)}
        >${words(seen)}</span
      >`,
  )}`;
}

function empty(page: Page): TemplateResult {
  return html`<div class="empty">
    <h2>Put stills of one reel on the table</h2>
    <p>
      Drop them anywhere: PNG, JPEG or TIFF, as the camera wrote them. Nothing leaves this computer. Look
      files and .cube tables can be dropped as well.
    </p>
    <p>
      Above lies the way of light. At each station a grey wedge shows what happens there: its upper row as the
      light arrives, its lower row as it leaves.
    </p>
    <p class="buttons">
      <button class="strong" @click=${() => chooseFiles(page)}>Choose files</button>
      <button @click=${() => openDemoStill(page, 'regatta', 'blue-shifted')}>Try it on a drawn still</button>
    </p>
  </div>`;
}

function comparisonButtons({ store }: Page): TemplateResult {
  const { comparison } = store.view;
  const offered = Object.entries(comparisonWords) as [Comparison, string][];
  const several = store.sheet().cards.length > 1;
  return html`<div class="segments" role="group" aria-label="What the picture shows">
    ${offered
      .filter(([name]) => name !== 'looks' || several)
      .map(
        ([name, words]) =>
          html`<button
            aria-pressed=${comparison === name ? 'true' : 'false'}
            @click=${() => store.look({ comparison: name, marking: undefined })}
          >
            ${words}
          </button>`,
      )}
  </div>`;
}

function holdButton(page: Page): TemplateResult {
  const key = (held: boolean) => (event: KeyboardEvent) => {
    if (event.key !== ' ' && event.key !== 'Enter') return;
    event.preventDefault();
    hold(page, held);
  };
  return html`<button
    aria-pressed=${page.dialogs.holding ? 'true' : 'false'}
    @pointerdown=${() => hold(page, true)}
    @pointerup=${() => hold(page, false)}
    @pointerleave=${() => hold(page, false)}
    @pointercancel=${() => hold(page, false)}
    @keydown=${key(true)}
    @keyup=${key(false)}
    @blur=${() => hold(page, false)}
  >
    Hold: recording
  </button>`;
}

/** What the picture is compared with, and its marks. */
function comparing(page: Page): TemplateResult {
  const { store } = page;
  const { marks } = store.view;
  return html`<div class="tools" role="toolbar" aria-label="Comparing">
    ${comparisonButtons(page)} ${holdButton(page)}
    <label class="check">
      <input type="checkbox" .checked=${live(marks)} @change=${() => store.look({ marks: !marks })} />Marks of
      loss
    </label>
  </div>`;
}

/** Turning the reel, and how near one looks. */
function viewing(page: Page, still: Still): TemplateResult {
  const { store, sight, dialogs } = page;
  const { viewport } = store.view;
  const [{ picture }] = layout(store.sheet(), store.view, still, sight, dialogs.holding).scene.tiles;
  const seenWidth = store.sheet().turn.transposed ? still.height : still.width;
  const percent = Math.round((100 * picture.width) / seenWidth);
  const turn = (what: string, next: typeof turnedRight) => () =>
    store.change(what, (sheet) => ({ ...sheet, turn: next(sheet.turn) }));
  const icon = (label: string, lines: Parameters<typeof drawing>[0], act: () => void) =>
    html`<button class="icon" aria-label=${label} title=${label} @click=${act}>${drawing(lines)}</button>`;
  return html`<div
    class="viewing"
    role="toolbar"
    aria-orientation="vertical"
    aria-label="Looking at the picture"
  >
    ${icon('Closer', drawings.closer, () => zoomBy(page, zoomStep))}
    <output class="zoom" aria-label="Size">${percent} %</output>
    ${icon('Further away', drawings.further, () => zoomBy(page, 1 / zoomStep))}
    <button aria-pressed=${viewport.zoom === undefined ? 'true' : 'false'} @click=${() => zoomToWhole(page)}>
      Whole
    </button>
    <button
      aria-pressed=${viewport.zoom !== undefined && percent === 100 ? 'true' : 'false'}
      @click=${() => zoomToPixels(page)}
    >
      Pixels
    </button>
    <span class="apart"></span>
    ${icon('Turn a quarter to the right', drawings.turn, turn('turn', turnedRight))}
    ${icon('Mirror left and right', drawings.across, turn('mirroring', mirroredAcross))}
    ${icon('Mirror top and bottom', drawings.down, turn('mirroring', mirroredDown))}
  </div>`;
}

/** The picture on its neutral bed, with what lies over it and its tools below. */
export function picture(page: Page, glass: Glass): TemplateResult {
  const { store, sight } = page;
  const still = stillOf(page);
  return html`<section class="picture" aria-label="The picture">
    <div class="bed ${store.view.marking ? 'marking' : ''}">
      ${sight.element}
      ${
        still === undefined
          ? empty(page)
          : html`<div
                class="glass"
                tabindex="0"
                role="group"
                aria-label="${still.name}. Arrow keys move, plus and minus zoom, 0 whole, 1 pixels, hold o for the recording, m marks"
                @pointerdown=${glass.pointerdown}
                @pointermove=${glass.pointermove}
                @pointerup=${glass.pointerup}
                @pointercancel=${glass.pointercancel}
                @wheel=${glass.wheel}
                @dblclick=${glass.dblclick}
                @keydown=${(event: KeyboardEvent) => pictureKey(page, event)}
                @keyup=${(event: KeyboardEvent) => pictureKeyUp(page, event)}
                @blur=${() => hold(page, false)}
              >
                <svg class="over" aria-hidden="true">${rectangles(page, still, glass)}</svg>
              </div>
              ${captions(page, still)} ${splitHandle(page, still)}`
      }
    </div>
    ${still === undefined ? nothing : html`${viewing(page, still)} ${comparing(page)}`}
  </section>`;
}
