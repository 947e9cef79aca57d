import type { Command } from 'commander';
import { fileStem } from '../../clips/clip-name.js';
import { checkTarget, writeSafely } from '../../files/write-beside-then-rename.js';
import { previewLook } from '../../jobs/preview-look.js';
import { type Flip, flipPicture } from '../../picture/orientation.js';
import { loadEngine } from '../engine/load-engine.js';
import { loadSource } from '../load.js';
import {
  type ClipOptions,
  flipOption,
  forceOption,
  jsonOption,
  matrixOption,
  rangeOption,
} from '../options.js';
import { noteAll, printable, printJson, terminal } from '../report.js';
import { openStillFor } from '../still-for-look.js';

interface Options extends ClipOptions {
  readonly output?: string;
  readonly flip?: Flip;
  readonly json: boolean;
  readonly force: boolean;
}

export function addPreview(program: Command): void {
  program
    .command('preview')
    .summary('show a look on a still, before and after')
    .description(
      'Shows a look on a still: before and after side by side as an ordinary sRGB screen shows them, waveform and ' +
        'histogram of both, and marks where highlights burn out or shadows block that were not so before.',
    )
    .argument('<look>', 'look file (.json) or LUT (.cube, .clf)')
    .argument('<still>', 'PNG, JPEG or TIFF as the camera wrote it, or a frame of a movie: reel.mkv@1:20.5')
    .option('-o, --output <file>', 'the picture (.png, .jpg, .tif); named after still and look when left out')
    .addOption(flipOption())
    .addOption(matrixOption())
    .addOption(rangeOption())
    .addOption(jsonOption())
    .addOption(forceOption())
    .addHelpText(
      'after',
      '\nExample:\n  gatelight preview looks/warm-stock-and-lamp.json regatta.png -o seen.png --flip h\n',
    )
    .action(async (lookPath: string, stillPath: string, options: Options) => {
      const output = options.output ?? `${fileStem(stillPath)}-${fileStem(lookPath)}.png`;
      const writing = { force: options.force, sources: [lookPath, stillPath] };
      const source = await loadSource(lookPath);
      const { encodeStill } = await import('../../stills/write-still.js');
      const { loadLabelFonts } = await import('../../stills/label-fonts.js');
      const { picture: read, notes } = await openStillFor(source.signals.input, stillPath, options);
      noteAll(stillPath, notes);
      await checkTarget(output, writing);
      const picture = options.flip === undefined ? read : flipPicture(read, options.flip);
      const preview = previewLook(
        source.lut,
        source.signals,
        { name: stillPath, picture },
        source.name,
        loadLabelFonts(),
        loadEngine(),
      );
      const { bytes } = await encodeStill(output, preview.picture);
      await writeSafely(output, bytes, writing);
      if (options.json) printJson({ look: source.name, still: stillPath, output, ...preview.figures });
      else terminal.result(`${printable(output)}: ${preview.caption}.`);
    });
}
