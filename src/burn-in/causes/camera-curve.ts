import type { TransferFunction } from '../../colour/transfer-functions/index.js';
import { transferFunctions } from '../../colour/transfer-functions/index.js';
import type { Cause, Variant } from './cause.js';
import { inTurn, onEach } from './cause.js';

const isOther =
  ({ title: other }: TransferFunction) =>
  ({ title }: TransferFunction) =>
    title !== other;

export const cameraCurve: Cause = {
  title: "the look was applied on the wrong side of the camera's own curve",
  advice:
    'The look expects the codes that the plain still holds: set the camera to apply it after its curve.',
  gentle: false,
  variants: ({ look, cameraCurve: own }) =>
    [own, ...(Object.values(transferFunctions) as TransferFunction[]).filter(isOther(own))]
      .filter(isOther(transferFunctions.linear))
      .flatMap(({ title, encode, decode }): Variant[] => [
        {
          words: `before the curve instead of after it (${title})`,
          predict: inTurn(onEach(decode), look, onEach(encode)),
        },
        {
          words: `after the curve instead of before it (${title})`,
          predict: inTurn(onEach(encode), look, onEach(decode)),
        },
      ]),
};
