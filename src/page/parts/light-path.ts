import { html, type TemplateResult } from 'lit-html';
import { classMap } from 'lit-html/directives/class-map.js';
import { stationList } from '../stations/index.js';
import type { Station } from '../stations/station.js';
import { type StationName, wedgeSteps } from '../stations/up-to.js';
import { drawing, stationDrawings } from './icons.js';
import type { Page } from './parts.js';
import { styled } from './styled.js';

/** How wide the light is where it enters and leaves a station, as a share: it widens to the screen, and ends in the eye. */
const beam: Readonly<Record<StationName, readonly [enters: number, leaves: number]>> = {
  gate: [0.3, 0.42],
  stock: [0.42, 0.54],
  print: [0.54, 0.66],
  lamp: [0.66, 0.82],
  screen: [0.82, 1],
  eye: [1, 0.4],
  file: [0.4, 0.4],
};

const percent = (share: number) => `${(100 * share).toFixed(1)}%`;

function outline(name: StationName): string {
  const [enters, leaves] = beam[name].map((width) => (1 - width) / 2);
  return `polygon(0 ${percent(enters)}, 100% ${percent(leaves)}, 100% ${percent(1 - leaves)}, 0 ${percent(1 - enters)})`;
}

const colour = (wedge: readonly number[], step: number) =>
  `rgb(${[0, 1, 2].map((c) => Math.round(255 * wedge[3 * step + c])).join(' ')})`;

/**
 * The wedge as it arrives (above) and as it leaves (below), in the beam of the station; of a finished table, which does not
 * tell, the beam alone.
 */
function sketch({ name }: Station, arrives?: readonly number[], leaves?: readonly number[]): TemplateResult {
  const steps = arrives && leaves ? [...Array(wedgeSteps).keys()] : [];
  return html`<span class="beam" ${styled({ 'clip-path': outline(name) })} aria-hidden="true">
    ${steps.map(
      (step) =>
        html`<i ${styled({ background: colour(arrives!, step) })}></i
          ><i ${styled({ background: colour(leaves!, step) })}></i>`,
    )}
  </span>`;
}

const plain = Array.from({ length: 3 * wedgeSteps }, (_, i) => Math.floor(i / 3) / (wedgeSteps - 1));

/** What the two rows of a wedge are. */
export const wedgeWords = 'A grey wedge: above as the light arrives here, below as it leaves';

/** The way from gate to file: every station with what it does to a grey wedge. */
export function lightPath({ store, findings }: Page): TemplateResult {
  const card = store.card();
  const isShaped = card.kind === 'look';
  const unknown = Array.from({ length: stationList.length + 1 }, () => (isShaped ? plain : undefined));
  const wedges = (isShaped && findings.wedges) || unknown;
  return html`<nav class="path" aria-label="The way of light, from gate to file">
    <ol>
      ${stationList.map((station, i) => {
        const here = store.view.station === station.name;
        const asked = isShaped ? station.inShort(card.look) : '';
        const idle = isShaped ? 'as it came' : 'in the table';
        return html`<li>
          <button
            class=${classMap({ station: true, here, idle: asked === '' })}
            title=${isShaped ? wedgeWords : ''}
            aria-current=${here ? 'step' : 'false'}
            @click=${() => store.look({ station: station.name })}
          >
            <span class="heading">${drawing(stationDrawings[station.name])}<b>${station.title}</b></span>
            ${sketch(station, wedges[i], wedges[i + 1])}
            <span class="short" title=${asked}>${asked === '' ? idle : asked}</span>
          </button>
        </li>`;
      })}
    </ol>
  </nav>`;
}
