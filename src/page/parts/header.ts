import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import { repeat } from 'lit-html/directives/repeat.js';
import { chooseFiles } from '../files.js';
import { copyCard, openCard, removeCard, rename } from '../state/actions.js';
import { type Card, cardName, mostCards, plainLook, shaped } from '../state/sheet.js';
import { readyLooks } from '../ready-looks.js';
import { drawing, drawings } from './icons.js';
import type { Page } from './parts.js';

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
            .value=${live(name)}
            @change=${(event: Event) => {
              const input = event.target as HTMLInputElement;
              rename(store, input.value);
              input.value = cardName(store.card());
            }}
          />`
        : html`<button
            class="name"
            aria-current=${here ? 'true' : 'false'}
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

/** Ready looks and new ones: chosen, and the list stands at its first line again. */
function startFrom({ store }: Page): TemplateResult {
  const choose = (event: Event) => {
    const select = event.target as HTMLSelectElement;
    const at = select.selectedIndex - 1;
    select.selectedIndex = 0;
    if (at === 0) openCard(store, shaped(plainLook()));
    else if (at === 1) copyCard(store);
    else if (readyLooks[at - 2] !== undefined) openCard(store, shaped(readyLooks[at - 2]));
  };
  return html`<select class="start" aria-label="Add a look" @change=${choose}>
    <option selected>Add a look …</option>
    <option>New, nothing changed</option>
    <option ?disabled=${store.card().kind === 'table'}>Copy of this one</option>
    <optgroup label="Ready looks">${readyLooks.map(({ name }) => html`<option>${name}</option>`)}</optgroup>
  </select>`;
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
    ${cards.length < mostCards ? startFrom(page) : nothing}
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
        Object.assign(dialogs, { open: 'save', title: '' });
        page.changed();
      }}
    >
      Save …
    </button>
  </header>`;
}
