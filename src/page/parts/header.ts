import { html, nothing, type TemplateResult } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import { chooseFiles } from '../files.js';
import { removeCard, rename } from '../state/actions.js';
import { type Card, cardName } from '../state/sheet.js';
import { openDialog } from './dialog.js';
import { drawing, drawings } from './icons.js';
import type { Page } from './parts.js';
import { typed } from './typed.js';

function card({ store }: Page, one: Card, removable: boolean): TemplateResult {
  const here = store.view.card === one.id;
  const name = cardName(one);
  return html`<li class=${here ? 'here' : ''}>
    ${
      here && one.kind === 'look'
        ? html`<input
            class="name"
            type="text"
            aria-label="Name of the look"
            maxlength="200"
            ${typed(name)}
            @change=${(event: Event) => {
              const input = event.target as HTMLInputElement;
              rename(store, input.value);
              input.value = cardName(store.card());
            }}
          />`
        : html`<button
            class="name"
            aria-current=${here ? 'true' : 'false'}
            title=${name}
            @click=${() => store.look({ card: one.id })}
          >
            ${name}
          </button>`
    }
    ${
      removable
        ? html`<button
            class="icon"
            aria-label="Take “${name}” off the table"
            @click=${() => removeCard(store, one.id)}
          >
            ${drawing(drawings.remove)}
          </button>`
        : nothing
    }
  </li>`;
}

/** The looks that lie on the table, and what is done with the whole. */
export function header(page: Page): TemplateResult {
  const { store, dialogs, findings } = page;
  const { cards } = store.sheet();
  const { past, future } = store.history;
  const undo = past[past.length - 1];
  const [redo] = future;
  return html`<header>
    <h1>Gatelight</h1>
    <ul class="cards" aria-label="Looks on the table">
      ${repeat(
        cards,
        ({ id }) => id,
        (one) => card(page, one, cards.length > 1),
      )}
    </ul>
    <div class="acts">
      <button @click=${() => openDialog(page, 'add')}>Add a look …</button>
      <span class="busy" role="status">${findings.busy[findings.busy.length - 1] ?? ''}</span>
      <span class="together">
        <button
          class="icon"
          ?disabled=${undo === undefined}
          aria-label=${undo === undefined ? 'Undo' : `Undo: ${undo.change}`}
          title=${undo === undefined ? 'Undo' : `Undo: ${undo.change} (Ctrl Z)`}
          @click=${() => store.undo()}
        >
          ${drawing(drawings.undo)}
        </button>
        <button
          class="icon"
          ?disabled=${redo === undefined}
          aria-label=${redo === undefined ? 'Redo' : `Redo: ${redo.change}`}
          title=${redo === undefined ? 'Redo' : `Redo: ${redo.change} (Ctrl Shift Z)`}
          @click=${() => store.redo()}
        >
          ${drawing(drawings.redo)}
        </button>
      </span>
      <button @click=${() => chooseFiles(page)}>Open …</button>
      <button
        class="strong"
        @click=${() => {
          dialogs.title = '';
          openDialog(page, 'save');
        }}
      >
        Save …
      </button>
    </div>
  </header>`;
}
