import type { Command } from 'commander';
import { addExposure } from './capture/exposure.js';
import { addSheet } from './capture/sheet.js';

export function addCapture(program: Command): void {
  const capture = program
    .command('capture')
    .summary('the capture sheet, and the exposure test')
    .description(
      'Before the reel runs: the arithmetic of the shoot on one sheet, and a test of the exposure.',
    );
  addSheet(capture);
  addExposure(capture);
}
