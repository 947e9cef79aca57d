// The stations of the light path: which fields of a look each sets, and in which words and units. They know looks; they
// must not know how controls are drawn, nor any worker.
import type { Look } from '../../look/look-schema.js';
import type { FieldPath } from '../state/field.js';
import type { StationName } from './up-to.js';

interface OfField {
  readonly path: FieldPath;
  readonly label: string;
  /** Shown only where this holds. */
  readonly when?: (look: Look) => boolean;
  /** Why it changes nothing as the look stands, in words; empty where it does. */
  readonly idle?: (look: Look) => string;
}

/** A number with a slider and a field. */
export interface NumberControl extends OfField {
  readonly kind: 'number';
  /** What stands behind the field: %, stops, K, cd/m². */
  readonly unit: string;
  /** Shown figure = value x scale; 1 when left out. */
  readonly scale?: number;
  /** One step of the shown figure. */
  readonly step: number;
  /** Ends of the slider as shown figures, where the look file allows more than is usual. */
  readonly usual?: readonly [number, number];
  /** Equal ways on the slider are equal ratios. */
  readonly ratio?: boolean;
  /** For a field that may be left out: what it then is, and in words. */
  readonly leftOut?: { readonly words: string; readonly value: (look: Look) => number };
}

/** One of some names, or left out. */
export interface ChoiceControl extends OfField {
  readonly kind: 'choice';
  readonly options: readonly Option[];
}

export interface Option {
  readonly label: string;
  /** What it is, where the label is only a name. */
  readonly note?: string;
  /** Written into the field; undefined leaves it out. */
  readonly value: unknown;
  /** Whether this is what the field holds, where equality does not tell. */
  readonly holds?: (value: unknown) => boolean;
}

export interface ToggleControl extends OfField {
  readonly kind: 'toggle';
}

export type Control = NumberControl | ChoiceControl | ToggleControl;

export interface Group {
  readonly title: string;
  readonly controls: readonly Control[];
}

export interface Station {
  readonly name: StationName;
  readonly title: string;
  /** What happens here, one sentence. */
  readonly purpose: string;
  readonly groups: readonly Group[];
  /** What the look asks for here, in few words; empty when nothing. */
  readonly inShort: (look: Look) => string;
}

/** All fields that a station sets. */
export const fieldsOf = ({ groups }: Station): FieldPath[] =>
  groups.flatMap(({ controls }) => controls.map(({ path }) => path));

const digits = (step: number) => Math.max(0, -Math.floor(Math.log10(step) + 1e-9));

/** A figure with as many decimals as its step has, with a true minus sign. */
export const figure = (value: number, step: number): string =>
  value
    .toFixed(digits(step))
    .replace(/^-(?=0\.?0*$)/, '')
    .replace('-', '−');

/** A figure that is only worth saying when it is not nothing. */
export const signed = (value: number, step: number): string =>
  `${value > 0 ? '+' : ''}${figure(value, step)}`;

/** Three figures, each behind the initial of its colour: `R 0.0 G +1.5 B −0.5`. */
export const tagged = (initials: string, figures: readonly string[]): string =>
  figures.map((one, i) => `${initials[i]}\u00a0${one}`).join(' ');
