import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { drawing, drawings } from './icons.js';
import type { Page } from './parts.js';

/** What the page has to say: a problem until it is put away or the same goes well. */
export function messages({ store }: Page): TemplateResult {
  return html`<div class="messages" role="alert">
    ${repeat(
      store.messages,
      ({ id }) => id,
      ({ id, kind, text }) =>
        html`<p class=${kind}>
          <span
            ><b
              >${kind === 'note' ? 'Note.' : text.includes('\n') ? 'These cannot be used.' : 'This cannot be used.'}</b
            >
            ${text.split('\n').map((line) => html`<span class="line">${line}</span>`)}</span
          >
          <button class="icon" aria-label="Put this message away" @click=${() => store.dismiss(id)}>
            ${drawing(drawings.remove)}
          </button>
        </p>`,
    )}
  </div>`;
}
