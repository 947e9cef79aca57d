import type { Command } from 'commander';
import { exposureText } from '../../../capture/exposure-text.js';
import { testExposure } from '../../../capture/exposure-test.js';
import { InputError } from '../../../errors/input-error.js';
import { writeSafely } from '../../../files/write-beside-then-rename.js';
import type { LabelFonts } from '../../../preview/typeface.js';
import {
  cameraOf,
  type CameraOptions,
  ceilingOption,
  encodingOption,
  loadStills,
  stillSignalOf,
} from '../../camera-options.js';
import { checkPicture, drawnFile } from '../../drawn-picture.js';
import { exitCodes } from '../../exit-codes.js';
import { forceOption, jsonOption, matrixOption, rangeOption } from '../../options.js';
import { checkRectangle, type GivenRectangle, parseRectangle } from '../../rectangles.js';
import { repeatedStills } from '../../repeated-stills.js';
import { noteAll, printable, printJson, terminal } from '../../report.js';

interface ExposureOptions extends CameraOptions {
  readonly area?: GivenRectangle;
  readonly picture?: string;
  readonly json: boolean;
  readonly force: boolean;
}

export function addExposure(capture: Command): void {
  capture
    .command('exposure')
    .summary('compare stills of one frame at several exposures')
    .description(
      'Compares stills of the same frame taken at several sensitivities or lamp levels: what is burnt out and blocked ' +
        'by channel, the headroom left, the noise in the shadows, and which one to take. Start around half of the lamp’s ' +
        'range, use the lightest frame of the reel, and change nothing else between the stills. Let film stand in a cool gate ' +
        'only: a projection lamp burns it.',
    )
    .argument(
      '<stills...>',
      'PNG, JPEG or TIFF as the camera wrote them, or frames of movies, all of one size',
    )
    .addOption(encodingOption())
    .option('--like <look>', 'look file whose camera section says how the stills were written')
    .addOption(ceilingOption())
    .option(
      '--area <x,y,w,h>',
      'look at this part only: the film’s picture, without perforation and mask',
      (text) => parseRectangle('--area', text),
    )
    .addOption(matrixOption())
    .addOption(rangeOption())
    .option('--picture <file>', 'the stills with what is lost in each, as a picture (.png, .jpg, .tif)')
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight capture exposure lamp-30.png lamp-50.png lamp-70.png --picture exposure.png\n',
    )
    .action(compareExposures);
}

async function compareExposures(paths: string[], options: ExposureOptions): Promise<void> {
  const { picture, area } = options;
  const writing = { force: options.force, sources: paths };
  await checkPicture(picture, writing);
  const camera = await cameraOf(options, paths);
  const stills = await loadStills(paths, options);
  checkSizes(stills);
  // No refusal: what is wholly burnt out is the same at several exposures.
  for (const { name, what } of repeatedStills(stills)) noteAll(name, [`${what}: it tells nothing more`]);
  if (area !== undefined) checkRectangle(area, stills);
  const signal = stillSignalOf(camera, options.ceiling);
  const test = testExposure(stills, signal, area?.box);
  if (picture !== undefined) {
    const { reportExposure } = await import('../../../jobs/report-exposure.js');
    const draw = (fonts: LabelFonts) => reportExposure(test, stills, camera, signal, area?.box, fonts);
    await writeSafely(picture, await drawnFile(picture, draw), writing);
  }
  if (options.json) printJson({ picture, ...test });
  else {
    for (const line of exposureText(test).split('\n')) terminal.result(printable(line));
    if (picture !== undefined) terminal.result(`${printable(picture)}: the same as a picture.`);
  }
  if (!test.advice.startsWith('take')) process.exitCode = exitCodes.notGood;
}

function checkSizes(stills: Awaited<ReturnType<typeof loadStills>>): void {
  const [first] = stills;
  const other = stills.find(
    ({ picture: { width, height } }) => width !== first.picture.width || height !== first.picture.height,
  );
  if (other === undefined) return;
  const size = ({ width, height }: { width: number; height: number }) => `${width} x ${height}`;
  throw new InputError({
    file: other.name,
    what: `has ${size(other.picture)} pixels, ${first.name} has ${size(first.picture)}`,
    hint: 'An exposure test needs stills of the same frame at the same size.',
  });
}
