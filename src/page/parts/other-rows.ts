import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Look } from '../../look/look-schema.js';
import { setField } from '../state/actions.js';
import { fieldOf, meaningOf, valueOf } from '../state/field.js';
import type { Store } from '../state/store.js';
import type { ChoiceControl, Option, ToggleControl } from '../stations/station.js';

const holds = ({ value, holds: own }: Option, field: unknown) =>
  own === undefined ? value === field : own(field);

/** Options that can only be brought in by a file are listed where the look holds them. */
const isOffered = (option: Option, field: unknown) =>
  option.value !== undefined || option.holds?.(undefined) === true || holds(option, field);

export function choiceRow(store: Store, look: Look, { path, label, options }: ChoiceControl): TemplateResult {
  const field = fieldOf(look, path) ?? valueOf(look, path);
  const id = `field-${path.replaceAll('.', '-')}`;
  const offered = options.filter((option) => isOffered(option, field));
  const note = offered.find((option) => holds(option, field))?.note;
  const choose = (event: Event) => {
    const option = offered[(event.target as HTMLSelectElement).selectedIndex];
    if (!holds(option, field)) setField(store, path, option.value, label.toLowerCase());
  };
  return html`<div class="row choice" title=${meaningOf(path)}>
    <label for=${id}>${label}</label>
    <select id=${id} @change=${choose}>
      ${offered.map((option) => html`<option .selected=${live(holds(option, field))}>${option.label}</option>`)}
    </select>
    ${note === undefined ? nothing : html`<small>${note}</small>`}
  </div>`;
}

export function toggleRow(store: Store, look: Look, { path, label }: ToggleControl): TemplateResult {
  const set = (event: Event) =>
    setField(store, path, (event.target as HTMLInputElement).checked, label.toLowerCase());
  return html`<div class="row toggle" title=${meaningOf(path)}>
    <label
      ><input type="checkbox" .checked=${live(valueOf(look, path) === true)} @change=${set} />${label}</label
    >
  </div>`;
}
