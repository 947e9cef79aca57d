import { dyeSets } from '../../film/dye-sets/index.js';
import type { Look } from '../../look/look-schema.js';
import { isAged } from '../../look/sections/stock.js';
import type { FieldPath } from '../state/field.js';
import { withoutLamp } from './lamp.js';
import { figure, type NumberControl, type Station, tagged } from './station.js';

const loss = (dye: 'cyan' | 'magenta' | 'yellow'): NumberControl => ({
  kind: 'number',
  path: `stock.loss.${dye}`,
  label: `${dye[0].toUpperCase()}${dye.slice(1)} dye lost`,
  unit: '%',
  scale: 100,
  step: 0.5,
});

const stain = (colour: 'red' | 'green' | 'blue'): NumberControl => ({
  kind: 'number',
  path: `stock.stain.${colour}` as FieldPath,
  label: `Stain seen in ${colour}`,
  unit: 'density',
  step: 0.005,
  usual: [-0.1, 0.5],
});

/** Whether no dye is given back and no stain taken out. */
export const isSound = ({ stock: asked }: Look): boolean => asked === undefined || !isAged(asked);

export const stock: Station = {
  name: 'stock',
  title: 'Stock',
  purpose: 'What time did to the dyes, and is undone here.',
  groups: [
    {
      title: 'The film',
      controls: [
        {
          kind: 'choice',
          path: 'stock.dyes',
          label: 'Dye set',
          options: Object.entries(dyeSets).map(([value, { title }]) => ({ label: title, value })),
          idle: (look) =>
            isSound(look) && withoutLamp(look) !== ''
              ? 'Changes nothing as long as no dye is lost, no stain added and no lamp chosen.'
              : '',
        },
      ],
    },
    { title: 'Loss of dye', controls: [loss('cyan'), loss('magenta'), loss('yellow')] },
    { title: 'Density added to the base', controls: [stain('red'), stain('green'), stain('blue')] },
  ],
  inShort: (look) => {
    if (look.stock === undefined) return '';
    const { loss: lost, stain: added } = look.stock;
    const shares = [lost.cyan, lost.magenta, lost.yellow].map((share) => figure(100 * share, 1));
    const stained = [added.red, added.green, added.blue].some((density) => density !== 0);
    const faded = shares.some((share) => share !== '0');
    return `${faded ? `lost ${tagged('CMY', shares)} %` : ''}${faded && stained ? ', ' : ''}${stained ? 'stain' : ''}`;
  },
};
