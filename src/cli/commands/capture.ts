import type { Command } from 'commander';
import { addExposure } from './capture/exposure.js';
import { addSheet } from './capture/sheet.js';
import { addSpeed } from './capture/speed.js';

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
  addSheet(capture);
  addExposure(capture);
  addSpeed(capture);
}
