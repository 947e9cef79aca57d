import type { FieldPath } from '../state/field.js';
import { type NumberControl, signed, type Station, tagged } from './station.js';

const points = (colour: 'red' | 'green' | 'blue'): NumberControl => ({
  kind: 'number',
  path: `print.printerPoints.${colour}` as FieldPath,
  label: `${colour[0].toUpperCase()}${colour.slice(1)} light`,
  unit: 'points',
  step: 0.5,
  usual: [-25, 25],
});

export const print: Station = {
  name: 'print',
  title: 'Print',
  purpose: 'What a lab’s grader would do: light, printer points, contrast.',
  groups: [
    {
      title: 'Exposure',
      controls: [
        {
          kind: 'number',
          path: 'print.exposureStops',
          label: 'Exposure',
          unit: 'stops',
          step: 0.05,
          usual: [-2, 2],
        },
      ],
    },
    { title: 'Printer points', controls: [points('red'), points('green'), points('blue')] },
    {
      title: 'The print',
      controls: [
        {
          kind: 'number',
          path: 'print.contrast',
          label: 'Contrast about mid-grey',
          unit: '×',
          step: 0.01,
          usual: [0.5, 2],
          ratio: true,
        },
        {
          kind: 'number',
          path: 'print.saturation',
          label: 'Saturation',
          unit: '×',
          step: 0.01,
          usual: [0, 2],
        },
      ],
    },
  ],
  inShort: ({ print: asked }) => {
    if (asked === undefined) return '';
    const { red, green, blue } = asked.printerPoints;
    return [
      asked.exposureStops === 0 ? '' : `${signed(asked.exposureStops, 0.05)} stops`,
      red || green || blue
        ? `points ${tagged(
            'RGB',
            [red, green, blue].map((value) => signed(value, 0.5)),
          )}`
        : '',
      asked.contrast === 1 ? '' : `contrast ${asked.contrast}`,
      asked.saturation === 1 ? '' : `colour ${asked.saturation}`,
    ]
      .filter((part) => part !== '')
      .slice(0, 2)
      .join(', ');
  },
};
