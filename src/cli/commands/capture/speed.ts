import type { Command } from 'commander';
import { parseRate } from '../../../capture/rate.js';
import { fewestFrames, measureSpeed, type SpeedReport } from '../../../capture/speed/measure-speed.js';
import { lightFrames } from '../../../capture/speed/light-frame.js';
import { readSeries } from '../../../capture/speed/series.js';
import { speedText } from '../../../capture/speed/speed-text.js';
import type { FrameTimes } from '../../../clips/frame-times.js';
import type { ProbedClip } from '../../../clips/probe.js';
import { InputError } from '../../../errors/input-error.js';
import { writeSafely, type WriteOptions } from '../../../files/write-beside-then-rename.js';
import { transferFunctionOf } from '../../../look/sections/signal.js';
import { cameraOf, type CameraOptions, encodingOption } from '../../camera-options.js';
import { checkPicture, drawnFile } from '../../drawn-picture.js';
import { requireMovieName } from '../../kind-of-name.js';
import { openClip } from '../../open-still.js';
import {
  forceOption,
  jsonOption,
  matrixOption,
  numberOption,
  rangeOption,
  refuseOption,
  wholeNumber,
} from '../../options.js';
import { noteAll, printable, printJson, terminal } from '../../report.js';

interface SpeedOptions extends CameraOptions {
  readonly filmFps: number;
  readonly blades: number;
  readonly openShare?: number;
  readonly cameraFps?: number;
  readonly shutter?: number;
  readonly picture?: string;
  readonly json: boolean;
  readonly force: boolean;
}

/** Frames are looked at so wide, in pixels: enough for grain, and for the place of the frame line. */
const seenWidth = 128;

/** `1/50`, `50` and `0.02` all mean 0.02 s. */
function parseShutter(text: string): number {
  const value = parseRate(text, '--shutter');
  return value > 1 ? 1 / value : value;
}

function sizeOf({ width, height }: ProbedClip): { width: number; height: number } {
  const scale = Math.min(1, seenWidth / width);
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** The clip's own rate. @throws InputError when its frames do not follow each other at one rate */
async function rateOf(clip: ProbedClip): Promise<{ fps: number; times: FrameTimes }> {
  const { frameTimes, unsteadyFrame } = await import('../../../clips/frame-times.js');
  const times = await frameTimes(clip);
  if (unsteadyFrame(times, clip.frameRate) !== undefined)
    throw new InputError({
      file: clip.path,
      what: 'its frames do not follow each other at one rate',
      hint: 'Set the camera to a constant frame rate: a beat is told by it.',
    });
  const [frames, second] = clip.frameRate;
  return { fps: frames / second, times };
}

async function measureClip(path: string, options: SpeedOptions): Promise<SpeedReport> {
  await requireMovieName(path);
  const clip = await openClip(path, options);
  noteAll(path, clip.notes);
  const { fps, times } = await rateOf(clip);
  const cameraFps = options.cameraFps ?? fps;
  if (options.shutter !== undefined && options.shutter * cameraFps > 1.001)
    refuseOption('--shutter', `${options.shutter} s`, `at most the time of a frame, 1/${cameraFps} s`);
  if (times.seconds.length < fewestFrames)
    throw new InputError({
      file: path,
      what: `has ${times.seconds.length} frames`,
      allowed: `${fewestFrames} or more; 20 seconds tell most`,
    });
  const { readFrames } = await import('../../../clips/read-frames.js');
  const { decode } = transferFunctionOf((await cameraOf(options, [path])).encoding);
  const frames = readFrames(clip, { pixels: 'gray16', size: sizeOf(clip) }, times);
  const series = await readSeries(lightFrames(frames, decode));
  return measureSpeed(series, {
    nominalFps: options.filmFps,
    blades: options.blades,
    openShare: options.openShare,
    cameraFps,
    exposureS: options.shutter,
  });
}

async function run(path: string, options: SpeedOptions): Promise<void> {
  const { picture } = options;
  const writing: WriteOptions = { force: options.force, sources: [path] };
  await checkPicture(picture, writing);
  const report = await measureClip(path, options);
  if (picture !== undefined) {
    const { reportSpeed } = await import('../../../jobs/report-speed.js');
    const drawn = await drawnFile(picture, (fonts) => reportSpeed(report, path, fonts));
    await writeSafely(picture, drawn, writing);
  }
  if (options.json) {
    // The curves are for the plot: thousands of numbers.
    printJson({ clip: path, picture, ...report, light: undefined, wave: undefined, pulsePhases: undefined });
    return;
  }
  terminal.result(speedText(report).trimEnd());
  if (picture !== undefined) terminal.result(`${printable(picture)}: the same as a picture.`);
}

const rate = (option: string) => (text: string) => parseRate(text, option);

export function addSpeed(capture: Command): void {
  capture
    .command('speed')
    .summary('read the projector’s speed and its flicker off a test recording')
    .description(
      'Reads off a test recording, of plain leader or of a picture, how the light pulses from frame to frame and how film ' +
        'frames fall on video frames: the flicker, its beat against the camera, the projector’s true speed, the trim or the ' +
        'exposure that ends it, and jumps of the frame line. Record about 20 seconds at fixed exposure and white balance.',
    )
    .argument('<clip>', 'a movie file as the camera wrote it')
    .option(
      '--film-fps <rate>',
      'what the projector is said to run at; searched 15 % about it',
      rate('--film-fps'),
      18,
    )
    .option('--blades <n>', 'blades of the projector’s shutter', wholeNumber('--blades', 1, 6), 3)
    .option(
      '--open-share <share>',
      'share of the time that light passes, 0.05 to 1; left out: 0.5',
      numberOption('--open-share', 0.05, 1),
    )
    .option('--camera-fps <rate>', 'frame rate of the camera, if it is not the file’s', rate('--camera-fps'))
    .option('--shutter <time>', 'exposure time of the camera, such as 1/50', parseShutter)
    .addOption(encodingOption())
    .option('--like <look>', 'look file whose camera section says how the recording was written')
    .addOption(matrixOption())
    .addOption(rangeOption())
    .option('--picture <file>', 'the light from frame to frame as a picture (.png, .jpg, .tif)')
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight capture speed test.mkv --film-fps 18 --blades 3 --shutter 1/50\n',
    )
    .action(run);
}
