import type { Command } from 'commander';
import { addExposure } from './capture/exposure.js';
import { addSheet } from './capture/sheet.js';
import type { OwnCommand } from '../own-command.js';
import { addSpeed } from './capture/speed.js';

/** Commander would take any word for one of the sheet, which may be left out and takes none. */
function refuseUnknown(capture: Command, below: Command): void {
  const [word = '--'] = capture.args;
  if (!word.startsWith('-') && word !== below.name()) (capture as OwnCommand).unknownCommand(word);
}

export function addCapture(program: Command): void {
  const capture = program
    .command('capture')
    .summary('the capture sheet, the exposure test, the projector’s speed')
    .description(
      'Before the reel runs: the arithmetic of the shoot on one sheet, a test of the exposure, and what a test recording tells of speed and flicker.',
    )
    .addHelpText(
      'after',
      '\nExample:\n  gatelight capture --gauge 8mm --metres 15\n\nOptions of the sheet: gatelight capture sheet --help\n',
    );
  capture.hook('preSubcommand', refuseUnknown);
  addSheet(capture);
  addExposure(capture);
  addSpeed(capture);
}
