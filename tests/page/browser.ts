import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';

/** Where Chromium usually lies. */
const usualPlaces = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/snap/bin/chromium',
  '/usr/lib/chromium/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Nothing is fetched, colours are sRGB, and WebGL2 is computed by the processor: the same on every machine. */
const quiet = [
  '--headless',
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--force-color-profile=srgb',
];
const softwareGraphics = ['--disable-gpu', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'];
const noGraphics = ['--disable-gpu', '--disable-3d-apis'];

/** @throws one clear line where there is no browser: that is a failure, never a reason to skip */
export function browserPath(): string {
  const given = process.env.GATELIGHT_CHROMIUM;
  const found = given ?? usualPlaces.find((place) => existsSync(place));
  if (found === undefined)
    throw new Error(
      'No Chromium found: install it (Debian: apt-get install chromium) or set GATELIGHT_CHROMIUM to its path.',
    );
  if (!existsSync(found)) throw new Error(`GATELIGHT_CHROMIUM is ${found}, and there is no such file.`);
  return found;
}

/** @param graphics whether it can do WebGL2 */
export const launchBrowser = ({ graphics = true } = {}): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath(),
    args: [...quiet, ...(graphics ? softwareGraphics : noGraphics)],
  });
