import { transferFunctions } from '../../colour/transfer-functions/index.js';
import { deliveryOf } from '../../look/sections/delivery.js';
import {
  asCamera,
  encodings,
  primariesOptions,
  ranges,
  typedInCurve,
  typedInPrimaries,
} from './signal-options.js';
import type { Station } from './station.js';

export const file: Station = {
  name: 'file',
  title: 'File',
  purpose: 'How highlights and shadows end, and what the device expects.',
  groups: [
    {
      title: 'Roll-off',
      controls: [
        {
          kind: 'number',
          path: 'rolloff.shoulderSoftness',
          label: 'Softness of the shoulder',
          unit: '%',
          scale: 100,
          step: 1,
        },
        {
          kind: 'number',
          path: 'rolloff.shoulderStart',
          label: 'Shoulder starts at',
          unit: '% light',
          scale: 100,
          step: 1,
          idle: ({ rolloff }) =>
            rolloff === undefined || rolloff.shoulderSoftness === 0
              ? 'Changes nothing as long as the shoulder has no softness.'
              : '',
        },
        { kind: 'number', path: 'rolloff.toe', label: 'Toe', unit: '%', scale: 100, step: 1 },
      ],
    },
    {
      title: 'What the device expects',
      controls: [
        {
          kind: 'choice',
          path: 'delivery.encoding',
          label: 'Encoding',
          options: [asCamera, ...encodings, typedInCurve],
        },
        {
          kind: 'choice',
          path: 'delivery.primaries',
          label: 'Primaries',
          options: [asCamera, ...primariesOptions, typedInPrimaries],
        },
        { kind: 'choice', path: 'delivery.range', label: 'Range', options: [asCamera, ...ranges] },
        { kind: 'toggle', path: 'delivery.gamutCompression', label: 'Bring colours in that do not fit' },
      ],
    },
  ],
  inShort: ({ camera, rolloff, delivery }) => {
    const { encoding, range } = deliveryOf(delivery, camera);
    const curve = typeof encoding === 'string' ? transferFunctions[encoding].title : 'typed-in log';
    const soft = rolloff !== undefined && rolloff.shoulderSoftness > 0 ? ', soft' : '';
    return `${curve}${range === 'legal' ? ' legal' : ''}${soft}`;
  },
};
