import { html, nothing, type TemplateResult } from 'lit-html';
import { addLook } from './add-look.js';
import { controls } from './controls.js';
import type { glassEvents } from './glass.js';
import { header } from './header.js';
import { judgement } from './judgement.js';
import { lightPath } from './light-path.js';
import { messages } from './messages.js';
import type { Page } from './parts.js';
import { picture } from './picture.js';
import { reelStrip } from './reel-strip.js';
import { save } from './save.js';

const dialogs = { none: () => nothing, save, add: addLook };

/** The whole page: looks, light path, controls beside the picture, what the checks say, the reel. */
export function whole(page: Page, glass: ReturnType<typeof glassEvents>): TemplateResult {
  return html`${header(page)} ${lightPath(page)}
    <main>${controls(page)} ${picture(page, glass)} ${judgement(page)}</main>
    ${reelStrip(page)} ${messages(page)} ${dialogs[page.dialogs.open ?? 'none'](page)}`;
}
