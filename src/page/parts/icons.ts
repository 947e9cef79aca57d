import { svg, type SVGTemplateResult } from 'lit-html';
import type { StationName } from '../stations/up-to.js';

/** Line drawings of the stations, 28 x 28: what stands there on the way of light. */
export const stationDrawings: Readonly<Record<StationName, SVGTemplateResult>> = {
  gate: svg`<rect x="12" y="4" width="12" height="20" rx="1"/><rect x="15.5" y="9" width="5" height="10"/>
    <path d="M2 14h7M3 8l5 3M3 20l5-3"/>`,
  stock: svg`<path d="M4 3v22M24 3v22M9 3v22"/><path d="M6.5 5v3M6.5 12.500v3M6.5 20v3"/><path d="M9 9.500h15M9 18.500h15"/>`,
  print: svg`<path d="M4 7h13v18H4z"/><path d="M9 7V3h13v18h-5"/><path d="M4 13h13M4 19h13"/>`,
  lamp: svg`<circle cx="11" cy="13" r="6"/><path d="M8.500 12l2 3 1-3 2 3M9 19v5h4v-5"/><path d="M21 7c2.500 4 2.500 8 0 12"/>`,
  screen: svg`<path d="M6 4h17v16H6z"/><path d="M4 4h21M14.500 20v5M9 25h11"/>`,
  eye: svg`<path d="M2.500 14c5.500-8 17.500-8 23 0-5.500 8-17.500 8-23 0z"/><circle cx="14" cy="14" r="3.500"/>`,
  file: svg`<path d="M6 3h11l6 6v16H6z"/><path d="M17 3v6h6"/><path d="M10 14h9M10 18h9M10 22h5"/>`,
};

export const drawings = {
  undo: svg`<path d="M9 6 4 11l5 5"/><path d="M4 11h10a6 6 0 0 1 0 12h-3"/>`,
  redo: svg`<path d="m19 6 5 5-5 5"/><path d="M24 11H14a6 6 0 0 0 0 12h3"/>`,
  turn: svg`<path d="M20 9a9 9 0 1 0 2.500 7"/><path d="M21 3v6h-6"/>`,
  across: svg`<path d="M14 3v22" stroke-dasharray="2 2.500"/><path d="M11 7 3 21h8zM17 7l8 14h-8z"/>`,
  down: svg`<path d="M3 14h22" stroke-dasharray="2 2.500"/><path d="M7 11 21 3v8zM7 17l14 8v-8z"/>`,
  closer: svg`<path d="M14 5v18M5 14h18"/>`,
  further: svg`<path d="M5 14h18"/>`,
  remove: svg`<path d="m7 7 14 14M21 7 7 21"/>`,
} as const satisfies Record<string, SVGTemplateResult>;

/** A line drawing; words beside it or a label on its button say what it is. */
export const drawing = (lines: SVGTemplateResult) =>
  svg`<svg class="drawing" viewBox="0 0 28 28" aria-hidden="true">${lines}</svg>`;
