import { lamps } from '../../projection/lamps/index.js';
import type { Look } from '../../look/look-schema.js';
import type { Station } from './station.js';

const holdsField = (name: string) => (value: unknown) =>
  typeof value === 'object' && value !== null && name in value;

/** Where the slider starts when a Planck radiator is chosen: an incandescent projection lamp of high wattage. */
const usualKelvin = 3200;

const inWords = (name: string) => name.replaceAll('-', ' ');

/** For what only a lamp makes visible. */
export const withoutLamp = ({ projector }: Look): string =>
  projector?.lamp === undefined ? 'Changes nothing as long as no lamp is chosen.' : '';

const isPlanck = ({ projector }: Look) => holdsField('kelvin')(projector?.lamp);

export const lamp: Station = {
  name: 'lamp',
  title: 'Lamp',
  purpose: 'The projector’s lamp behind the film. One that was measured can be opened as a .csv file.',
  groups: [
    {
      title: 'The light source',
      controls: [
        {
          kind: 'choice',
          path: 'projector.lamp',
          label: 'Lamp',
          options: [
            {
              label: 'as neutral as the gate light',
              value: undefined,
              holds: (value) => value === undefined,
            },
            { label: 'glowing body (kelvin)', value: { kelvin: usualKelvin }, holds: holdsField('kelvin') },
            ...Object.entries(lamps).map(([value, { title }]) => ({
              label: inWords(value),
              note: title,
              value,
            })),
            { label: 'measured lamp', value: undefined, holds: holdsField('spectrum') },
          ],
        },
        {
          kind: 'number',
          path: 'projector.lamp.kelvin',
          label: 'Temperature',
          unit: 'K',
          step: 10,
          usual: [1800, 7000],
          ratio: true,
          when: isPlanck,
        },
        {
          kind: 'toggle',
          path: 'projector.heatFilter',
          label: 'Heat-absorbing glass before the lamp',
          idle: withoutLamp,
        },
      ],
    },
  ],
  inShort: ({ projector }) => {
    const choice = projector?.lamp;
    if (choice === undefined) return '';
    if (typeof choice === 'string') return inWords(choice);
    return 'kelvin' in choice ? `${choice.kelvin} K` : 'measured lamp';
  },
};
