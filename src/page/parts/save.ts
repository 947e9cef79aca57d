import { html, nothing, type TemplateResult } from 'lit-html';
import { live } from 'lit-html/directives/live.js';
import type { Look } from '../../look/look-schema.js';
import { limits } from '../../lut/formats/limits.js';
import { download, fileStem } from '../files.js';
import { lookText } from '../look-text.js';
import { cardName } from '../state/sheet.js';
import { orientationOf } from '../state/turn.js';
import { stillOf } from './glass.js';
import { dialogBox } from './dialog.js';
import type { Page } from './parts.js';
import { typed } from './typed.js';

const { least, most } = limits.latticeSize;
/** Sizes that devices usually load. */
const usualSizes = [17, 33, 65];

function saveTable({ engine, store, dialogs }: Page, look: Look): void {
  const { plain, title } = dialogs;
  const options = { size: store.view.size, plain, ...(title.trim() === '' ? {} : { title: title.trim() }) };
  void engine.whileBusy('Building the .cube file', async () => {
    download(
      `${fileStem(look.name)}.cube`,
      await engine.judge.call('build', { look, options }),
      'text/plain',
    );
  });
}

function savePreview(page: Page): void {
  const { engine, store, findings } = page;
  const shown = findings.shown.get(store.view.card);
  const still = stillOf(page);
  const lut = shown?.file?.lut ?? shown?.lattice;
  if (still === undefined || shown === undefined || lut === undefined) return;
  const name = cardName(store.card());
  const orientation = orientationOf(store.sheet().turn);
  void engine.whileBusy('Drawing the preview', async () => {
    const given = { id: still.id, still: still.name, lut, signals: shown.signals, name, orientation };
    const png = await engine.desk.call('preview', given);
    download(
      `${fileStem(still.name.replace(/\.[^.]*$/, ''))}-${fileStem(name)}.png`,
      png as BlobPart,
      'image/png',
    );
  });
}

function saveReport({ engine, store }: Page): void {
  void engine.whileBusy('Drawing the report', async () => {
    const png = await engine.measurer.call('report', {});
    download(`${fileStem(cardName(store.card()))}-measured.png`, png as BlobPart, 'image/png');
  });
}

/** What the checks say of the file that is about to be saved. */
function verdictWords({ store, findings }: Page): TemplateResult {
  const verdict = findings.verdicts.get(store.view.card);
  const isBad = verdict?.good === false;
  const faults = (verdict?.findings ?? []).filter(({ pass, severity }) => !pass && severity !== 'note');
  const words = isBad
    ? `Do not burn this in before it is mended. ${faults.map(({ sentence }) => sentence).join(' ')}`
    : verdict === undefined
      ? 'Checking this very table …'
      : 'This very table is checked: nothing speaks against loading it.';
  return html`<p class=${isBad ? 'problem' : ''} role="status">${words}</p>`;
}

function tableForm(page: Page, look: Look): TemplateResult {
  const { dialogs, store } = page;
  const { size: chosen } = store.view;
  const set = (next: Partial<Page['dialogs']>) => {
    Object.assign(dialogs, next);
    page.changed();
  };
  const size = (event: Event) => {
    const input = event.target as HTMLInputElement;
    const value = Math.round(input.valueAsNumber);
    if (value >= least && value <= most) store.look({ size: value });
    else input.value = String(chosen);
  };
  return html`<fieldset>
    <legend>Table for the device (.cube)</legend>
    <div class="row choice">
      <label for="save-size">Points a side</label>
      <span class="figure">
        <input
          id="save-size"
          type="number"
          min=${least}
          max=${most}
          ${typed(String(chosen))}
          @change=${size}
        />
        ${usualSizes.map(
          (one) =>
            html`<button
              aria-pressed=${chosen === one ? 'true' : 'false'}
              @click=${() => store.look({ size: one })}
            >
              ${one}
            </button>`,
        )}
      </span>
    </div>
    <div class="row choice">
      <label for="save-title">Title</label>
      <input
        id="save-title"
        type="text"
        maxlength="200"
        placeholder=${look.name}
        ${typed(dialogs.title)}
        @change=${(event: Event) => set({ title: (event.target as HTMLInputElement).value })}
      />
    </div>
    <div class="row toggle">
      <label>
        <input
          type="checkbox"
          .checked=${live(dialogs.plain)}
          @change=${(event: Event) => set({ plain: (event.target as HTMLInputElement).checked })}
        />Plain: nothing but size and rows, for devices that stumble over more
      </label>
    </div>
    ${verdictWords(page)}
    <button class="strong" @click=${() => saveTable(page, look)}>Save .cube</button>
  </fieldset>`;
}

/** What can be taken away: table, look file, preview, report. */
export function save(page: Page): TemplateResult {
  const { store, findings } = page;
  const card = store.card();
  const hasStill = store.view.still !== undefined;
  const content = html`${card.kind === 'look' ? tableForm(page, card.look) : verdictWords(page)}
    <fieldset>
      <legend>More</legend>
      <p class="buttons">
        ${
          card.kind === 'look'
            ? html`<button
                @click=${() => download(`${fileStem(card.look.name)}.json`, lookText(card.look), 'application/json')}
              >
                Save look file
              </button>`
            : nothing
        }
        <button ?disabled=${!hasStill} @click=${() => savePreview(page)}>Save preview picture</button>
        <button ?disabled=${findings.measurement === undefined} @click=${() => saveReport(page)}>
          Save measurement report
        </button>
      </p>
    </fieldset>`;
  return dialogBox(page, `Save “${cardName(card)}”`, content);
}
