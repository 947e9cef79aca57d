// The light table's figures, printed beside their targets: from a slider to the picture, long tasks, first paint, size.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { packageFolder } from '../../src/cli/maker.js';
import { renderDemoStill } from '../../src/demo/index.js';
import { percentile } from '../../src/maths/percentile.js';
import { launchBrowser } from '../page/browser.js';
import { servedPage } from '../page/served-page.js';

const targets = { sliderMs: 50, longTaskMs: 100, paintMs: 1000, kilobytes: 400 };
/** Inputs of a drag; the first few warm up. */
const [inputs, warmUp] = [24, 4];

const say = (line: string) => process.stdout.write(`${line}\n`);
const median = (values: number[]) => percentile(Float64Array.from(values), 0.5);

function row(what: string, figure: number, unit: string, target?: number, more = ''): void {
  const verdict = target === undefined ? '' : figure <= target ? `<= ${target}  met` : `<= ${target}  MISSED`;
  say(`${what.padEnd(44)}${figure.toFixed(0).padStart(6)} ${unit.padEnd(3)} ${verdict.padEnd(16)}${more}`);
}

/** Everything that a first visit fetches, compressed as servers do. Fonts are compressed already; the older kind is not fetched. */
function pageKilobytes(): number {
  const folder = join(packageFolder, 'dist/page');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    ['.html', '.js', '.css', '.woff2'].includes(extname(name)),
  );
  return (
    files.reduce((sum, name) => sum + gzipSync(readFileSync(join(folder, name)), { level: 9 }).length, 0) /
    1000
  );
}

async function stillFile(folder: string): Promise<string> {
  const [width, height] = [1920, 1080];
  const { data } = renderDemoStill('regatta', { age: 'blue-shifted', width, height });
  const file = join(folder, 'still.png');
  await sharp(data, { raw: { width, height, channels: 3 } })
    .png()
    .toFile(file);
  return file;
}

/** From the request to the page's own first frame: its header laid out and drawn. */
async function firstPaint(browser: Browser, url: string): Promise<number> {
  const times: number[] = [];
  for (let visit = 0; visit < 5; visit++) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 720 } });
    const page = await context.newPage();
    await page.addInitScript(() => {
      const seen = new MutationObserver(() => {
        if (document.querySelector('header') === null) return;
        seen.disconnect();
        requestAnimationFrame(() =>
          setTimeout(() => Object.assign(window, { seenAfter: performance.now() })),
        );
      });
      seen.observe(document, { childList: true, subtree: true });
    });
    await page.goto(url);
    await page.waitForFunction(() => 'seenAfter' in window);
    times.push(await page.evaluate(() => (window as unknown as { seenAfter: number }).seenAfter));
    await context.close();
  }
  return median(times);
}

/** The least that a picture can take here: a worker is told, waits for its frame, clears a canvas of that size and answers. */
async function emptyPicture(browser: Browser, width: number, height: number): Promise<number> {
  const page = await browser.newPage();
  const times = await page.evaluate(
    async ([w, h, count]) => {
      const canvas = document.body.appendChild(
        Object.assign(document.createElement('canvas'), { width: w, height: h }),
      );
      const source = `onmessage = ({ data }) => {
        if (data.canvas) { gl = data.canvas.getContext('webgl2', { alpha: false }); return; }
        requestAnimationFrame(() => { gl.clearColor(Math.random(), 0, 0, 1); gl.clear(gl.COLOR_BUFFER_BIT); setTimeout(() => postMessage(0)); });
      }; let gl;`;
      const worker = new Worker(URL.createObjectURL(new Blob([source])));
      const offscreen = canvas.transferControlToOffscreen();
      worker.postMessage({ canvas: offscreen }, [offscreen]);
      const took: number[] = [];
      for (let i = 0; i < count; i++) {
        const start = performance.now();
        worker.postMessage({});
        await new Promise((done) => (worker.onmessage = done));
        took.push(performance.now() - start);
        await new Promise(requestAnimationFrame);
      }
      return took;
    },
    [width, height, inputs] as const,
  );
  await page.close();
  return median(times.slice(warmUp));
}

interface Drag {
  readonly times: number[];
  readonly longTasks: number[];
}

/** Drags the first slider of the controls that are shown: every input as soon as the picture has followed the one before. */
function drag(page: Page): Promise<Drag> {
  return page.evaluate(async (count) => {
    const longTasks: number[] = [];
    const observer = new PerformanceObserver((list) =>
      longTasks.push(...list.getEntries().map(({ duration }) => duration)),
    );
    observer.observe({ entryTypes: ['longtask'] });
    const sight = document.querySelector<HTMLElement>('canvas.sight')!;
    const slider = document.querySelector<HTMLInputElement>('.controls input[type=range]')!;
    const [least, most] = [Number(slider.min), Number(slider.max)];
    const times: number[] = [];
    for (let i = 0; i < count; i++) {
      const drawn = new Promise<void>((done) => {
        const seen = new MutationObserver(() => {
          if (sight.dataset.points !== '17') return;
          seen.disconnect();
          done();
        });
        seen.observe(sight, { attributeFilter: ['data-drawn'] });
      });
      const start = performance.now();
      slider.value = String(least + (most - least) * (0.2 + (0.5 * i) / count));
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      await drawn;
      times.push(performance.now() - start);
      await new Promise(requestAnimationFrame);
    }
    await new Promise((done) => setTimeout(done, 1500));
    observer.disconnect();
    return { times, longTasks };
  }, inputs);
}

async function openJob(
  browser: Browser,
  url: string,
  still: string,
  width: number,
  height: number,
): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height } });
  await page.goto(url);
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Open …' }).click(),
  ]);
  await chooser.setFiles([still, join(packageFolder, 'looks/warm-stock-and-lamp.json')]);
  await page.locator('.judgement .is-good, .judgement .is-bad').waitFor({ timeout: 120_000 });
  await page.waitForTimeout(3000);
  return page;
}

async function main(): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'gatelight-bench-'));
  const [browser, served] = await Promise.all([launchBrowser(), servedPage()]);
  try {
    const still = await stillFile(folder);
    say(`Load of the machine: ${loadavg()[0].toFixed(1)} processes wanted a core in the last minute.\n`);
    row('whole page, compressed', pageKilobytes(), 'kB', targets.kilobytes);
    row('first useful paint', await firstPaint(browser, served.url), 'ms', targets.paintMs);
    for (const [width, height] of [
      [1280, 720],
      [1920, 1080],
    ]) {
      say(`\nA 1920 x 1080 still in a window of ${width} x ${height}, graphics by the processor:`);
      const page = await openJob(browser, served.url, still, width, height);
      const size = await page.locator('canvas.sight').boundingBox();
      const empty = await emptyPicture(browser, Math.round(size!.width), Math.round(size!.height));
      row('an empty picture of that size', empty, 'ms');
      const all: number[] = [];
      let longest = 0;
      for (const station of ['Stock', 'Print', 'Screen', 'File']) {
        await page.getByRole('navigation').getByRole('button', { name: station }).click();
        await page.waitForTimeout(1500);
        const { times, longTasks } = await drag(page);
        const kept = times.slice(warmUp);
        all.push(...kept);
        longest = Math.max(longest, ...longTasks);
        const ninth = percentile(Float64Array.from(kept), 0.9);
        row(
          `${station}: slider to picture, median`,
          median(kept),
          'ms',
          undefined,
          `9 of 10 within ${ninth.toFixed(0)} ms`,
        );
      }
      row(
        'slider to changed picture, median',
        median(all),
        'ms',
        targets.sliderMs,
        `${(median(all) / empty).toFixed(1)} empty pictures`,
      );
      row('longest task of the page', longest, 'ms', targets.longTaskMs);
      await page.close();
    }
  } finally {
    await browser.close();
    served.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

await main();
