import { html, type TemplateResult } from 'lit-html';
import { ref } from 'lit-html/directives/ref.js';
import type { Dialogs, Page } from './parts.js';

export function openDialog(page: Page, name: NonNullable<Dialogs['open']>): void {
  page.dialogs.open = name;
  page.changed();
}

/** The element is made before it stands in the document; only there can it be shown. */
function show(element: Element | undefined): void {
  queueMicrotask(() => {
    if (element instanceof HTMLDialogElement && element.isConnected && !element.open) element.showModal();
  });
}

/** Closes the box that a button lies in. */
export const closeDialog = (event: Event): void => (event.target as Element).closest('dialog')?.close();

/** A box over the page, with a heading and a way out; Escape closes it. */
export function dialogBox(page: Page, heading: string, content: TemplateResult): TemplateResult {
  const closed = () => {
    delete page.dialogs.open;
    page.changed();
  };
  return html`<dialog aria-labelledby="dialog-heading" ${ref(show)} @close=${closed}>
    <h2 id="dialog-heading">${heading}</h2>
    <div class="inside">${content}</div>
    <p class="buttons end">
      <span class="doing" role="status">${page.findings.busy[page.findings.busy.length - 1] ?? ''}</span>
      <button @click=${closeDialog}>Close</button>
    </p>
  </dialog>`;
}
