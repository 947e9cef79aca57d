import { type Command, Option } from 'commander';
import { type GaugeName, gauges } from '../../../capture/gauge.js';
import { parseRate } from '../../../capture/rate.js';
import type { CaptureRequest } from '../../../capture/request.js';
import { captureSheet } from '../../../capture/sheet.js';
import { sheetText } from '../../../capture/sheet-text.js';
import { type Sampling, samplesPerPixel } from '../../../capture/storage.js';
import { InputError } from '../../../errors/input-error.js';
import { freeBytes } from '../../../files/free-space.js';
import { jsonOption, numberOption, refuseOption } from '../../options.js';
import { printJson, terminal } from '../../report.js';

interface SheetOptions {
  readonly gauge: GaugeName;
  readonly feet?: number;
  readonly metres?: number;
  readonly filmFps?: number;
  readonly shotFps?: number;
  readonly blades: number;
  readonly openShare?: number;
  readonly cameraFps: number;
  readonly shutterSpeeds?: readonly number[];
  readonly resolution?: { readonly width: number; readonly height: number };
  readonly bits?: number;
  readonly sampling?: Sampling;
  readonly dataRate?: number;
  readonly freeGb?: number;
  readonly disk?: string;
  readonly json: boolean;
}

/** The option that a field of the request comes from, where its name is another. */
const optionNames: Readonly<Partial<Record<keyof CaptureRequest, string>>> = {
  filmFps: '--film-fps',
  shotFps: '--shot-fps',
  openShare: '--open-share',
  cameraFps: '--camera-fps',
  offered: '--shutter-speeds',
  width: '--resolution',
  height: '--resolution',
  mbitS: '--data-rate',
  freeBytes: '--free-gb',
};

/** Problems of the request in terms of the options that were given. */
function inOptions(error: unknown): unknown {
  if (!(error instanceof InputError)) return error;
  return new InputError(
    error.problems.map((problem) => ({
      ...problem,
      field: optionNames[problem.field as keyof CaptureRequest] ?? `--${problem.field}`,
    })),
  );
}

async function requestOf(options: SheetOptions): Promise<CaptureRequest> {
  const { gauge, filmFps, shutterSpeeds, resolution, dataRate, freeGb, disk, ...same } = options;
  return {
    ...same,
    ...resolution,
    gauge,
    // A gauge that is not known is refused with all else that is wrong.
    filmFps: filmFps ?? (Object.hasOwn(gauges, gauge) ? gauges[gauge].usualFps[0] : 18),
    offered: shutterSpeeds,
    mbitS: dataRate,
    freeBytes: disk !== undefined ? await freeBytes(disk) : freeGb === undefined ? undefined : freeGb * 1e9,
  };
}

const rate = (option: string) => (text: string) => parseRate(text, option);

function parseResolution(text: string): { width: number; height: number } {
  const parts = /^(\d{1,6})\s*[x×]\s*(\d{1,6})$/i.exec(text.trim());
  if (parts === null)
    return refuseOption('--resolution', text, 'width x height in pixels, such as 3840x2160');
  return { width: Number(parts[1]), height: Number(parts[2]) };
}

/** Shutter speeds as the x of 1/x s, with commas; `1/50` means 50. */
const parseSpeeds = (text: string): number[] =>
  text.split(',').map((speed) => parseRate(speed.trim().replace(/^1\//, ''), '--shutter-speeds'));

const usualSpeeds = (Object.keys(gauges) as GaugeName[])
  .map((name) => `${gauges[name].title} ${gauges[name].usualFps[0]}`)
  .join(', ');

export function addSheet(capture: Command): void {
  capture
    .command('sheet', { isDefault: true })
    .summary('shutter, running time and storage of a shoot, on one sheet (also plain `capture`)')
    .description(
      'Works out a shoot before it starts: flicker-free exposures, how projector and camera run together, running time, storage, and what to be careful of. Rates may be written 18, 16.67, 16 2/3 or 50/3.',
    )
    .requiredOption('--gauge <name>', `width of the film: ${Object.keys(gauges).join(', ')}`)
    .option('--feet <n>', 'length of the reel in feet', numberOption('--feet'))
    .option('--metres <n>', 'or in metres', numberOption('--metres'))
    .option('--film-fps <rate>', `speed of the projector; left out: ${usualSpeeds}`, rate('--film-fps'))
    .option('--shot-fps <rate>', 'speed the film was shot at; left out: the projector’s', rate('--shot-fps'))
    .option('--blades <n>', 'blades of the projector’s shutter', numberOption('--blades'), 3)
    .option(
      '--open-share <share>',
      'share of the time that light passes, 0.05 to 1; left out: 0.5',
      numberOption('--open-share'),
    )
    .option('--camera-fps <rate>', 'frame rate of the recording', rate('--camera-fps'), 25)
    .option('--shutter-speeds <list>', 'speeds the camera offers, x of 1/x s: 25,50,100', parseSpeeds)
    .option('--resolution <size>', 'of the recording; left out: 3840x2160', parseResolution)
    .option('--bits <n>', 'bits a sample; left out: 10', numberOption('--bits'))
    .option(
      '--sampling <kind>',
      `chroma sampling, ${Object.keys(samplesPerPixel).join(', ')}; left out: 4:2:2`,
    )
    .option(
      '--data-rate <n>',
      'of the recording in Mbit/s; left out: a planning figure',
      numberOption('--data-rate'),
    )
    .addOption(
      new Option(
        '--disk <folder>',
        'folder the recording goes to: the free space of its disk is looked up',
      ).conflicts('freeGb'),
    )
    .option('--free-gb <n>', 'or that free space in GB of 10^9 bytes', numberOption('--free-gb', 0, 1e9))
    .addOption(jsonOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight capture --gauge super8 --feet 200 --camera-fps 25 --disk .\n',
    )
    .action(async (options: SheetOptions) => {
      const { json, ...rest } = options;
      const request = await requestOf({ ...rest, json });
      try {
        const sheet = captureSheet(request);
        if (json) printJson(sheet);
        else terminal.result(sheetText(sheet).trimEnd());
      } catch (error) {
        throw inOptions(error);
      }
    });
}
