import { daylight } from '../../colour/illuminants/daylight.js';
import type { Lamp } from './lamp.js';

export const xenon: Lamp = {
  title: 'xenon arc',
  source:
    'colour temperature: common practice, no source; spectrum: CIE daylight of it, without the lines of the arc',
  kelvin: 5600,
  spectrum: daylight(5600),
};
