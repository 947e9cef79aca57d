import { adaptationOf, roomSchema } from '../../look/sections/room.js';
import { withoutLamp } from './lamp.js';
import { figure, type Station } from './station.js';
import { surrounds } from './surrounds.js';

export const eye: Station = {
  name: 'eye',
  title: 'Eye',
  purpose: 'How far the eye forgets the lamp’s colour, and where the result will be seen.',
  groups: [
    {
      title: 'Adaptation',
      controls: [
        {
          kind: 'number',
          path: 'room.adaptation',
          label: 'Adaptation to the lamp',
          unit: '%',
          scale: 100,
          step: 1,
          idle: withoutLamp,
          leftOut: {
            words: 'from luminance and surround',
            value: ({ room }) => adaptationOf({ ...(room ?? roomSchema.parse({})), adaptation: undefined }),
          },
        },
      ],
    },
    {
      title: 'The display that shows the result',
      controls: [
        { kind: 'choice', path: 'room.displaySurround', label: 'Around the display', options: surrounds },
      ],
    },
  ],
  inShort: ({ room }) => (room === undefined ? '' : `adapted ${figure(100 * adaptationOf(room), 1)} %`),
};
