import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Look } from '../../look/look-schema.js';
import { setField } from '../state/actions.js';
import { fieldOf, limitsOf, meaningOf, valueOf } from '../state/field.js';
import type { Store } from '../state/store.js';
import { figure, type NumberControl } from '../stations/station.js';
import { typed } from './typed.js';

/** Steps of a slider whose equal ways are equal ratios. */
const ratioSteps = 1000;

interface Range {
  readonly min: number;
  readonly max: number;
}

/** Ends of the field and of its slider, as shown figures. */
function ends({ path, scale = 1, usual }: NumberControl): { field: Range; slider: Range } {
  const { min, max } = limitsOf(path);
  const field = { min: min * scale, max: max * scale };
  return { field, slider: usual === undefined ? field : { min: usual[0], max: usual[1] } };
}

const clamp = (value: number, { min, max }: Range) => Math.min(max, Math.max(min, value));

/** Where the slider stands for a figure, and back. */
function sliderOf({ ratio, step }: NumberControl, range: Range) {
  if (ratio !== true)
    return { min: range.min, max: range.max, step, to: (figure: number) => figure, from: (at: number) => at };
  const span = Math.log(range.max / range.min);
  return {
    min: 0,
    max: ratioSteps,
    step: 1,
    to: (figure: number) => (ratioSteps * Math.log(figure / range.min)) / span,
    from: (at: number) => range.min * Math.exp((at / ratioSteps) * span),
  };
}

const toStep = (value: number, step: number) => Number((Math.round(value / step) * step).toFixed(6));

function leftOutToggle(store: Store, look: Look, control: NumberControl): TemplateResult | typeof nothing {
  const { leftOut, path, label } = control;
  if (leftOut === undefined) return nothing;
  const isLeftOut = fieldOf(look, path) === undefined;
  const set = (event: Event) => {
    const { checked } = event.target as HTMLInputElement;
    setField(
      store,
      path,
      checked ? undefined : Number(leftOut.value(look).toPrecision(4)),
      label.toLowerCase(),
    );
  };
  return html`<label class="left-out">
    <input type="checkbox" .checked=${live(isLeftOut)} @change=${set} />${leftOut.words}
  </label>`;
}

/** A number: label, slider, field with its unit. */
export function numberRow(store: Store, look: Look, control: NumberControl): TemplateResult {
  const { path, label, unit, scale = 1, step } = control;
  const { field, slider } = ends(control);
  const way = sliderOf(control, slider);
  const value = (fieldOf(look, path) ?? control.leftOut?.value(look) ?? valueOf(look, path)) as number;
  const shown = value * scale;
  const text = figure(shown, step).replace('−', '-');
  const id = `field-${path.replaceAll('.', '-')}`;
  const set = (next: number) =>
    setField(store, path, Number((clamp(next, field) / scale).toPrecision(12)), label.toLowerCase());
  const slide = (event: Event) =>
    set(toStep(way.from(Number((event.target as HTMLInputElement).value)), step));
  const type = (event: Event) => {
    const input = event.target as HTMLInputElement;
    if (Number.isFinite(input.valueAsNumber)) set(input.valueAsNumber);
    else input.value = text;
  };
  return html`<div class="row" title=${meaningOf(path)}>
    <label for=${id}>${label}</label>
    <input
      type="range"
      aria-label="${label}, slider"
      aria-valuetext="${text} ${unit}"
      min=${way.min}
      max=${way.max}
      step=${way.step}
      .value=${live(String(way.to(clamp(shown, slider))))}
      @input=${slide}
    />
    <span class="figure">
      <input
        id=${id}
        type="number"
        inputmode="decimal"
        min=${field.min}
        max=${field.max}
        step="any"
        ${typed(text)}
        @change=${type}
        aria-describedby="${id}-unit"
      /><span class="unit" id="${id}-unit">${unit}</span>
    </span>
    ${leftOutToggle(store, look, control)}
  </div>`;
}
