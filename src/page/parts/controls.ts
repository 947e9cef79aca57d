import { html, nothing, type TemplateResult } from 'lit-html';
import { keyed } from 'lit-html/directives/keyed.js';
import type { Look } from '../../look/look-schema.js';
import { canonicalLook } from '../../look/canonical-look.js';
import { resetStation } from '../state/actions.js';
import { withoutFields } from '../state/field.js';
import type { Store } from '../state/store.js';
import { stations } from '../stations/index.js';
import { type Control, fieldsOf, type Station } from '../stations/station.js';
import { measuring } from './measuring.js';
import { numberRow } from './number-row.js';
import { choiceRow, toggleRow } from './other-rows.js';
import type { Page } from './parts.js';

function row(store: Store, look: Look, control: Control): TemplateResult | typeof nothing {
  if (control.when?.(look) === false) return nothing;
  const idle = control.idle?.(look) ?? '';
  return html`${fieldRow(store, look, control)}${idle === '' ? nothing : html`<p class="no-effect">${idle}</p>`}`;
}

function fieldRow(store: Store, look: Look, control: Control): TemplateResult {
  if (control.kind === 'number') return numberRow(store, look, control);
  return control.kind === 'choice' ? choiceRow(store, look, control) : toggleRow(store, look, control);
}

/** Whether all fields of a station are as they were at first. */
const isReset = (look: Look, station: Station): boolean =>
  canonicalLook(withoutFields(look, fieldsOf(station))) === canonicalLook(look);

/** The controls of the station that is looked at: from the first one on, whatever was scrolled to before. */
export const controls = (page: Page) => keyed(page.store.view.station, stationControls(page));

function stationControls(page: Page): TemplateResult {
  const { store } = page;
  const card = store.card();
  const station = stations[store.view.station];
  if (card.kind === 'table')
    return html`<section class="controls" aria-labelledby="station-title" tabindex="0">
      <h2 id="station-title">${station.title}</h2>
      <p class="purpose">
        ${card.name} is a finished table: it can be looked at and checked, not shaped. Take a look file or a
        new look to shape one.
      </p>
      ${page.findings.shown.get(card.id)?.notes.map((note) => html`<p class="purpose">${note}</p>`)}
    </section>`;
  return html`<section class="controls" aria-labelledby="station-title">
    <div class="title-line">
      <h2 id="station-title">${station.title}</h2>
      <button
        class="quiet"
        ?disabled=${isReset(card.look, station)}
        @click=${() => resetStation(store, station)}
      >
        Reset<span class="unseen"> ${station.title}</span>
      </button>
    </div>
    <p class="purpose">${station.purpose}</p>
    ${station.name === 'stock' ? measuring(page, card.look) : nothing}
    ${keyed(
      card.id,
      station.groups.map(
        ({ title, controls: rows }) =>
          html`<fieldset>
            <legend>${title}</legend>
            ${rows.map((control) => row(store, card.look, control))}
          </fieldset>`,
      ),
    )}
  </section>`;
}
