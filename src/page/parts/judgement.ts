import { html, nothing, type TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import type { Finding } from '../../lut/checks/index.js';
import { marksInWords } from '../../preview/clipping-marks.js';
import type { Picture } from '../../picture/picture.js';
import { type ScopeName, scopeNames } from '../worker/scope-names.js';
import type { Page } from './parts.js';
import { paint } from './reel-strip.js';

const scopeWords: Readonly<Record<ScopeName, { name: string; what: string }>> = {
  waveform: {
    name: 'Waveform',
    what: 'Waveform: red, green and blue beside each other, code values from bottom to top',
  },
  vectorscope: {
    name: 'Vectorscope',
    what: 'Vectorscope: grey in the middle, blueness to the right, redness upwards',
  },
  histogram: {
    name: 'Histogram',
    what: 'Histogram: how often each code value occurs; the line is the recording',
  },
};

/** Steps of the scales, per cent of the code range. */
const scaleSteps = [0, 25, 50, 75, 100];

/** Where the vectorscope's axes go, and what its ring is: half of the greatest difference from grey. */
const directions = html`<li class="redder">redder</li>
  <li class="bluer">bluer</li>
  <li class="ring">50 %</li>`;

const painted = new WeakMap<Element, Picture>();

function paintScope(element: Element | undefined, picture: Picture | undefined): void {
  if (!(element instanceof HTMLCanvasElement) || picture === undefined || painted.get(element) === picture)
    return;
  painted.set(element, picture);
  paint(element, picture);
}

function scopes({ store, findings }: Page): TemplateResult {
  const { scope } = store.view;
  return html`<div class="scopes">
    <div class="segments" role="group" aria-label="What is drawn of the code values">
      ${scopeNames.map(
        (name) =>
          html`<button
            aria-pressed=${scope === name ? 'true' : 'false'}
            @click=${() => store.look({ scope: name })}
          >
            ${scopeWords[name].name}
          </button>`,
      )}
    </div>
    <div class="plot of-${scope}">
      <canvas
        class="scope"
        role="img"
        aria-label=${scopeWords[scope].what}
        ${ref((element) => paintScope(element, findings.scope))}
      ></canvas>
      <ol class="scale" aria-hidden="true">
        ${scope === 'vectorscope' ? directions : scaleSteps.map((step) => html`<li>${step === 100 ? '100 %' : step}</li>`)}
      </ol>
    </div>
  </div>`;
}

const marks = { good: 'good', FAULT: 'fault', note: 'note' } as const;

function kindOf({ pass, severity }: Finding): keyof typeof marks {
  if (pass) return 'good';
  return severity === 'fault' ? 'FAULT' : 'note';
}

/** What the look newly loses on this still. */
function losses({ findings }: Page): TemplateResult {
  const lost = findings.clipping;
  const words = lost === undefined ? 'Counting losses …' : `On this still: ${marksInWords(lost).join(', ')}.`;
  return html`<p class="losses" role="status">${words}</p>`;
}

/** Faults first, then notes, then what is good. */
const order = ['FAULT', 'note', 'good'] as const;

/** What the code values look like, and what the checks say, in words. */
export function judgement(page: Page): TemplateResult {
  const { store, findings } = page;
  const verdict = findings.verdicts.get(store.view.card);
  const sorted = order.flatMap(
    (kind) => verdict?.findings.filter((finding) => kindOf(finding) === kind) ?? [],
  );
  const headline =
    verdict === undefined
      ? 'Checking …'
      : verdict.good
        ? 'Good: nothing speaks against loading it'
        : 'Not good: do not load it yet';
  return html`<section class="judgement" aria-label="Code values and checks">
    <h2 class=${verdict === undefined ? 'waiting' : verdict.good ? 'is-good' : 'is-bad'} role="status">
      ${headline}
    </h2>
    ${store.view.still === undefined ? nothing : html`${losses(page)} ${scopes(page)}`}
    <ul class="findings" tabindex="0" aria-label="Checks of the table">
      ${sorted.map((finding) => {
        const kind = kindOf(finding);
        return html`<li class=${marks[kind]}><b>${kind}</b> ${finding.sentence}</li>`;
      })}
    </ul>
  </section>`;
}
