import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { doubts, finding } from '../../jobs/reel-words.js';
import { type MarkKind, markKinds } from '../../measure/index.js';
import type { Look } from '../../look/look-schema.js';
import type { Found } from '../engine/findings.js';
import { addMark, changeMark, holdsMeasurement, removeMark, takeMeasurement } from '../state/actions.js';
import type { Mark } from '../state/sheet.js';
import { drawing, drawings } from './icons.js';
import type { Page } from './parts.js';
import { typed } from './typed.js';

export const markWords: Readonly<Record<MarkKind, { name: string; what: string }>> = {
  black: { name: 'Black', what: 'unexposed film: frame line, border' },
  clear: { name: 'Clear', what: 'light with no film at all: perforation' },
  film: { name: 'Clear film', what: 'film without picture: light-struck leader, scratch' },
  neutral: { name: 'Neutral', what: 'something known to have been grey or white' },
};

const dyes = ['cyan', 'magenta', 'yellow'] as const;
const percent = (share: number) => Math.round(100 * share);

/** A mark in the middle of the still, for those who draw with keys. */
function markInTheMiddle({ store }: Page, kind: MarkKind): void {
  const still = store.sheet().stills.find(({ id }) => id === store.view.still);
  if (still === undefined) return;
  const [width, height] = [Math.ceil(still.width / 10), Math.ceil(still.height / 10)];
  const [x, y] = [Math.floor((still.width - width) / 2), Math.floor((still.height - height) / 2)];
  addMark(store, { still: still.id, kind, x, y, width, height });
}

function markButton(page: Page, kind: MarkKind): TemplateResult {
  const { store } = page;
  const on = store.view.marking === kind;
  return html`<button
    class="mark-kind"
    aria-pressed=${on ? 'true' : 'false'}
    title=${markWords[kind].what}
    @click=${(event: MouseEvent) => {
      // A key press has no place (detail 0): there the mark is put down at once, to be moved by its figures.
      if (event.detail === 0) markInTheMiddle(page, kind);
      else store.look({ marking: on ? undefined : kind });
    }}
  >
    ${markWords[kind].name}
  </button>`;
}

const sides = [
  ['x', 'from left'],
  ['y', 'from top'],
  ['width', 'wide'],
  ['height', 'high'],
] as const;

function markRow({ store }: Page, mark: Mark, number: number): TemplateResult {
  const still = store.sheet().stills.find(({ id }) => id === mark.still)!;
  // A mark stays on its still: it moves as far as its size lets it, and grows as far as its place does.
  const most = {
    x: still.width - mark.width,
    y: still.height - mark.height,
    width: still.width - mark.x,
    height: still.height - mark.y,
  };
  const least = { x: 0, y: 0, width: 2, height: 2 };
  const set = (side: keyof typeof most) => (event: Event) => {
    const input = event.target as HTMLInputElement;
    const value = Math.min(most[side], Math.max(least[side], Math.round(input.valueAsNumber)));
    if (Number.isFinite(value)) changeMark(store, mark.id, { [side]: value });
    else input.value = String(mark[side]);
  };
  const name = `${markWords[mark.kind].name} ${number}`;
  return html`<li>
    <span class="mark-name">${name}</span>
    ${sides.map(
      ([side, words]) =>
        html`<label
          ><span aria-hidden="true">${words}</span
          ><input
            type="number"
            aria-label="${name}, pixels ${words}"
            title="pixels ${words}"
            min=${least[side]}
            max=${most[side]}
            ${typed(String(mark[side]))}
            @change=${set(side)}
        /></label>`,
    )}
    <button class="icon" aria-label="Remove ${name}" @click=${() => removeMark(store, mark.id)}>
      ${drawing(drawings.remove)}
    </button>
  </li>`;
}

/** What the button that takes the figures over says, and whether it rests: figures of marks that are gone are not taken. */
function takeButton({ store, findings }: Page, look: Look, measurement: Found): TemplateResult {
  const isHeld = holdsMeasurement(look, measurement);
  const words = isHeld ? 'The look holds these' : 'Take these into the look';
  return html`<button
    class="strong"
    ?disabled=${isHeld || findings.measuring}
    @click=${() => takeMeasurement(store, measurement)}
  >
    ${findings.measuring ? 'Measuring again …' : words}
  </button>`;
}

function result(page: Page, look: Look): TemplateResult | typeof nothing {
  const { findings } = page;
  const { measurement, measureProblem, measuring } = findings;
  if (measureProblem !== undefined) return html`<p class="problem">${measureProblem}</p>`;
  if (measurement === undefined) return measuring ? html`<p>Measuring …</p>` : nothing;
  const { loss, uncertainty, confidence, unused } = measurement;
  const notUsed = unused.map(({ name, why }) => `${name} ${why}: it was not used.`);
  return html`<div class="measured">
    <dl>
      ${dyes.map(
        (dye) =>
          html`<div>
            <dt>${dye} lost</dt>
            <dd>${percent(loss[dye])} % <small>± ${percent(uncertainty.loss[dye])}</small></dd>
          </div>`,
      )}
    </dl>
    <p>
      <b>Certainty: ${confidence.word}.</b>
      ${[finding(measurement), ...doubts(measurement), ...notUsed].join(' ')}
    </p>
    ${takeButton(page, look, measurement)}
  </div>`;
}

/** Measuring the reel: marks on the still, what was found, and taking it over. */
export function measuring(page: Page, look: Look): TemplateResult {
  const { store, findings } = page;
  const { stills, marks } = store.sheet();
  if (stills.length === 0)
    return html`<fieldset class="measure">
      <legend>Measure the reel</legend>
      <p>Open one or more stills of the reel: their losses are measured at once.</p>
    </fieldset>`;
  const { marking, still } = store.view;
  const here = marks.filter((mark) => mark.still === still);
  const elsewhere = marks.length - here.length;
  return html`<fieldset class="measure" aria-busy=${findings.measuring ? 'true' : 'false'}>
    <legend>Measure the reel</legend>
    <p>
      ${
        marking === undefined
          ? 'Marks make it surer. Choose a kind, then draw a rectangle on the still.'
          : `Draw on the still: ${markWords[marking].what}.`
      }
    </p>
    <div class="mark-kinds" role="group" aria-label="Mark on the still">
      ${markKinds.map((kind) => markButton(page, kind))}
    </div>
    ${result(page, look)}
    <ul class="marks">
      ${repeat(
        here,
        ({ id }) => id,
        (mark) => markRow(page, mark, marks.filter(({ kind }) => kind === mark.kind).indexOf(mark) + 1),
      )}
    </ul>
    ${elsewhere > 0 ? html`<p>${elsewhere} more on other frames.</p>` : nothing}
  </fieldset>`;
}
