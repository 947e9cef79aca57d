import { html, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { drawing, drawings } from './icons.js';
import type { Page } from './parts.js';

/** What the page has to say: problems until they are put away. */
export function messages({ store }: Page): TemplateResult {
  return html`<div class="messages" role="alert">
    ${repeat(
      store.messages,
      ({ id }) => id,
      ({ id, kind, text }) =>
        html`<p class=${kind}>
          <span><b>${kind === 'problem' ? 'This cannot be used.' : 'Note.'}</b> ${text}</span>
          <button class="icon" aria-label="Put this message away" @click=${() => store.dismiss(id)}>
            ${drawing(drawings.remove)}
          </button>
        </p>`,
    )}
  </div>`;
}
