import { html, nothing, type TemplateResult } from 'lit-html';
import { readyLooks } from '../ready-looks.js';
import { copyCard, isUntouched, openCard } from '../state/actions.js';
import { type Card, cardName, mostCards, plainLook, shaped } from '../state/sheet.js';
import { closeDialog, dialogBox } from './dialog.js';
import type { Page } from './parts.js';

/** What becomes of the looks on the table when one is added; empty where it simply comes beside them. */
function placeWords(card: Card, cards: readonly Card[]): string {
  if (isUntouched(card)) return 'A ready look takes the place of the new, unchanged one.';
  if (cards.length < mostCards) return 'It comes beside the looks that lie on the table.';
  return `Four looks lie on the table: it takes the place of “${cardName(card)}”. Undo brings that back.`;
}

function choice(name: string, note: string, act: () => void): TemplateResult {
  return html`<li>
    <button
      @click=${(event: Event) => {
        act();
        closeDialog(event);
      }}
    >
      <b>${name}</b><span>${note}</span>
    </button>
  </li>`;
}

/** New looks, copies and ready looks, each with what it is for. */
export function addLook(page: Page): TemplateResult {
  const { store } = page;
  const card = store.card();
  return dialogBox(
    page,
    'Add a look',
    html`<p>${placeWords(card, store.sheet().cards)}</p>
      <ul class="choices">
        ${choice('New look', 'Nothing is changed yet.', () => openCard(store, shaped(plainLook())))}
        ${
          card.kind === 'look'
            ? choice(`Copy of “${cardName(card)}”`, 'To try something and compare.', () => copyCard(store))
            : nothing
        }
        ${readyLooks.map((look) => choice(look.name, look.note, () => openCard(store, shaped(look))))}
      </ul>`,
  );
}
