import type { Command } from 'commander';
import { exposureText } from '../../../capture/exposure-text.js';
import { testExposure } from '../../../capture/exposure-test.js';
import { InputError } from '../../../errors/input-error.js';
import {
  cameraOf,
  type CameraOptions,
  ceilingOption,
  encodingOption,
  loadStills,
  stillSignalOf,
} from '../../camera-options.js';
import { exitCodes } from '../../exit-codes.js';
import { jsonOption, matrixOption, rangeOption } from '../../options.js';
import { checkRectangle, type GivenRectangle, parseRectangle } from '../../rectangles.js';
import { printable, printJson, terminal } from '../../report.js';

interface ExposureOptions extends CameraOptions {
  readonly area?: GivenRectangle;
  readonly json: boolean;
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
    .addOption(jsonOption())
    .addHelpText('after', '\nExample:\n  gatelight capture exposure lamp-30.png lamp-50.png lamp-70.png\n')
    .action(async (paths: string[], options: ExposureOptions) => {
      const camera = await cameraOf(options);
      const stills = await loadStills(paths, options);
      checkSizes(stills);
      if (options.area !== undefined) checkRectangle(options.area, stills);
      const test = testExposure(stills, stillSignalOf(camera, options.ceiling), options.area?.box);
      if (options.json) printJson(test);
      else for (const line of exposureText(test).split('\n')) terminal.result(printable(line));
      if (!test.advice.startsWith('take')) process.exitCode = exitCodes.notGood;
    });
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
