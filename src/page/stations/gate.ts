import { openGateOf } from '../../look/sections/camera.js';
import { transferFunctionOf } from '../../look/sections/signal.js';
import { transferFunctions } from '../../colour/transfer-functions/index.js';
import { encodings, primariesOptions, ranges, typedInCurve, typedInPrimaries } from './signal-options.js';
import type { Station } from './station.js';
import { isSound } from './stock.js';

export const gate: Station = {
  name: 'gate',
  title: 'Gate light',
  purpose: 'How the camera wrote down the film in the gate.',
  groups: [
    {
      title: 'The recording',
      controls: [
        { kind: 'choice', path: 'camera.encoding', label: 'Encoding', options: [...encodings, typedInCurve] },
        {
          kind: 'choice',
          path: 'camera.primaries',
          label: 'Primaries',
          options: [...primariesOptions, typedInPrimaries],
        },
        { kind: 'choice', path: 'camera.range', label: 'Range', options: ranges },
      ],
    },
    {
      title: 'The light without film',
      controls: [
        {
          kind: 'number',
          path: 'camera.openGate',
          label: 'Level of the open gate',
          unit: '% light',
          scale: 100,
          step: 0.1,
          usual: [1, 400],
          ratio: true,
          leftOut: {
            words: 'at diffuse white',
            value: ({ camera }) => openGateOf({ ...camera, openGate: undefined }),
          },
        },
        {
          kind: 'number',
          path: 'camera.flare',
          label: 'Stray light of the scan',
          unit: '% of the open gate',
          scale: 100,
          step: 0.05,
          usual: [0, 1],
          leftOut: { words: 'none', value: () => 0 },
          idle: (look) =>
            isSound(look) ? 'Changes nothing as long as no dye is lost and no stain added.' : '',
        },
      ],
    },
  ],
  inShort: ({ camera }) => {
    const curve =
      typeof camera.encoding === 'string' ? transferFunctions[camera.encoding].title : 'typed-in log';
    const level = openGateOf(camera) / transferFunctionOf(camera.encoding).whiteLight;
    return level === 1 ? curve : `${curve}, gate ${Math.round(100 * level)} %`;
  },
};
