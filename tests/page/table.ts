import { mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { projectRoot } from '../cli/gatelight.js';
import { launchBrowser } from './browser.js';
import { type Served, servedPage } from './served-page.js';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2, levels A and AA. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const pictures = join(projectRoot, 'out/page-screenshots');
mkdirSync(pictures, { recursive: true });

/** The light table in one tab, as a test drives it. */
export interface Table {
  readonly page: Page;
  /** Errors that the browser's console has told, the security policy's among them. */
  readonly faults: string[];
  button(name: string | RegExp): Locator;
  /** Opens files by a button that asks for them, and waits until each is there or refused. */
  open(...files: readonly string[]): Promise<void>;
  addLook(name: string): Promise<void>;
  station(title: string): Promise<void>;
  /** Waits until table, checks and measurement of what is on the page are there. */
  atRest(): Promise<void>;
  /** Saves by a button of the open box. @returns the file's bytes */
  saved(button: string): Promise<Buffer>;
  screenshot(name: string): Promise<void>;
  /** What axe and our own look for cut-off words find fault with. */
  complaints(): Promise<string[]>;
}

/** Words that do not fit their place: text longer than the box that hides the rest. */
function cutOff(): string[] {
  return [...document.querySelectorAll('#table *')]
    .filter((element) => {
      const { overflowX, display } = getComputedStyle(element);
      const holdsText = [...element.childNodes].some(
        (node) => node.nodeType === 3 && node.textContent?.trim(),
      );
      const hides = overflowX === 'hidden' && !element.classList.contains('unseen');
      const isToldInFull =
        element.getAttribute('title')?.includes(element.textContent?.trim() ?? '') === true;
      return holdsText && !isToldInFull && display !== 'none' && (hides || element.tagName === 'BUTTON')
        ? element.scrollWidth > element.clientWidth + 1
        : false;
    })
    .map((element) => `cut off: ${element.className || element.tagName} "${element.textContent?.trim()}"`);
}

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly target: unknown }[];
  }[];
}

async function axeComplaints(page: Page): Promise<string[]> {
  // Added by the debugger, since the page's own policy lets no foreign script in.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe);
  const { violations } = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run(on: Document, how: object): Promise<AxeResult> } }).axe.run(
        document,
        {
          runOnly: tags,
        },
      ),
    rules,
  );
  return violations.map(({ id, nodes }) => `axe ${id}: ${JSON.stringify(nodes.map(({ target }) => target))}`);
}

export async function openTable(context: BrowserContext, url: string): Promise<Table> {
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  const faults: string[] = [];
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  page.on('pageerror', (error) => faults.push(error.message));
  // From the start on: asked for only when a key is pressed, the browser's own box could open before it.
  page.on('filechooser', () => undefined);
  await page.goto(url);
  await page.locator('header').waitFor();
  return tableOn(page, faults);
}

export function tableOn(page: Page, faults: string[]): Table {
  const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
  return {
    page,
    faults,
    button,
    open: async (...files) => {
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), button('Open …').click()]);
      await chooser.setFiles([...files]);
      // The page says in its next frame that it is at work; before that it would pass for done.
      await page.evaluate(
        () => new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next))),
      );
      await page.waitForFunction(() => document.querySelector('.busy')?.textContent?.trim() === '');
    },
    addLook: async (name) => {
      await button('Add a look …').click();
      await page.getByRole('dialog').getByRole('button', { name }).first().click();
    },
    station: (title) => page.getByRole('navigation').getByRole('button', { name: title }).click(),
    atRest: async () => {
      await page.waitForFunction(() => {
        const drawn = document.querySelector<HTMLElement>('canvas.sight')?.dataset.points;
        const said = document.querySelector('.judgement h2')?.textContent?.trim();
        const busy = document.querySelector('.busy')?.textContent?.trim();
        const hasStill = document.querySelector('.glass') !== null;
        return (
          (!hasStill || Number(drawn) > 17) &&
          said !== 'Checking …' &&
          busy === '' &&
          !document.querySelector('[aria-busy="true"]') &&
          !document.querySelector('.losses')?.textContent?.includes('…')
        );
      });
    },
    saved: async (name) => {
      const [download] = await Promise.all([page.waitForEvent('download'), button(name).click()]);
      return readFileSync(await download.path());
    },
    screenshot: async (name) => {
      await page.screenshot({ path: join(pictures, `${name}.png`) });
    },
    complaints: async () => [...(await axeComplaints(page)), ...(await page.evaluate(cutOff))],
  };
}

/** For a file of tests: one browser and one served page; a fresh profile for every table. */
export function tables({ graphics = true } = {}) {
  let browser: Browser;
  let served: Served;
  const open = new Set<BrowserContext>();
  beforeAll(async () => {
    [browser, served] = await Promise.all([launchBrowser({ graphics }), servedPage()]);
  });
  afterAll(async () => {
    await browser?.close();
    served?.stop();
  });
  return {
    url: () => served.url,
    /** A browser profile of its own. */
    profile: async (width = 1280, height = 720): Promise<BrowserContext> => {
      for (const old of open) await old.close();
      open.clear();
      const context = await browser.newContext({ viewport: { width, height } });
      open.add(context);
      return context;
    },
    fresh: async function (width = 1280, height = 720): Promise<Table> {
      return openTable(await this.profile(width, height), served.url);
    },
  };
}

/** Nothing went wrong unseen. */
export const expectNoFaults = ({ faults }: Table) => expect(faults).toEqual([]);
