import { primaries } from '../colour/primaries/index.js';
import { transferFunctions } from '../colour/transfer-functions/index.js';
import { type Signal, screenSignal } from './signal.js';

const titleOf = (registry: Readonly<Record<string, { title: string }>>, choice: unknown, own: string) =>
  typeof choice === 'string' ? registry[choice].title : own;

/**
 * What the codes of a still are taken for, where that is not what an ordinary screen shows: a still that was written otherwise
 * then comes out in wrong colours, and no file tells. Empty for an ordinary picture.
 */
export function takenAs({ encoding, primaries: chosen, range }: Signal): string {
  const words = [
    ...(encoding === screenSignal.encoding
      ? []
      : [titleOf(transferFunctions, encoding, 'a typed-in log curve')]),
    ...(chosen === screenSignal.primaries ? [] : [titleOf(primaries, chosen, 'typed-in primaries')]),
    ...(range === screenSignal.range ? [] : [range]),
  ];
  return words.length === 0 ? '' : `taken as ${words.join(', ')}`;
}
