import { withoutLamp } from './lamp.js';
import { figure, type Station } from './station.js';
import { surrounds } from './surrounds.js';

export const screen: Station = {
  name: 'screen',
  title: 'Screen',
  purpose: 'The picture in its room: stray light, brightness, darkness around.',
  groups: [
    {
      title: 'Light on the screen',
      controls: [
        {
          kind: 'number',
          path: 'projector.flare',
          label: 'Veiling flare',
          unit: '% of white',
          scale: 100,
          step: 0.05,
          usual: [0, 3],
        },
        {
          kind: 'number',
          path: 'room.screenLuminance',
          label: 'Luminance at open gate',
          unit: 'cd/m²',
          step: 0.5,
          usual: [2, 200],
          ratio: true,
          idle: (look) =>
            withoutLamp(look) ||
            (look.room?.adaptation === undefined
              ? ''
              : 'Changes nothing: how far the eye adapts is set at the station Eye.'),
        },
      ],
    },
    {
      title: 'The room',
      controls: [{ kind: 'choice', path: 'room.surround', label: 'Around the screen', options: surrounds }],
    },
  ],
  inShort: ({ projector, room }) =>
    [
      room === undefined ? '' : room.surround,
      projector?.flare ? `flare ${figure(100 * projector.flare, 0.1)} %` : '',
    ]
      .filter((part) => part !== '')
      .join(', '),
};
