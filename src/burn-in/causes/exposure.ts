import type { Run } from '../../maths/matrix3.js';
import type { Cause, CauseContext } from './cause.js';
import { inTurn, onEach } from './cause.js';

/** Stops each way, and the step of the first search: finer than the valley of the fit is wide. */
const widest = 2;
const coarse = 0.25;
/** Stops below which a change is the lamp's or the shutter's own unsteadiness, not somebody's hand. */
const least = 0.04;

const golden = (Math.sqrt(5) - 1) / 2;

/** The least of a function with one valley between two places, to 0.002 stops. */
function valley(of: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [atA, atB] = [of(a), of(b)];
  while (high - low > 0.002) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - golden * (high - low);
      atA = of(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + golden * (high - low);
      atB = of(b);
    }
  }
  return (low + high) / 2;
}

/** The plain still as it would be with another exposure, then through the look. */
const exposed = ({ look, cameraCurve: { encode, decode } }: CauseContext, stops: number): Run =>
  inTurn(
    onEach((code) => encode(decode(code) * 2 ** stops)),
    look,
  );

export const exposure: Cause = {
  title: 'the exposure changed between the two stills',
  advice: 'The look itself may be right: lock exposure, gain and lamp, and take both stills again.',
  gentle: false,
  variants: (context) => {
    const misfit = (stops: number) => context.misfit(exposed(context, stops));
    const tries = Array.from({ length: (2 * widest) / coarse + 1 }, (_, i) => -widest + coarse * i);
    const figures = tries.map(misfit);
    const near = tries[figures.indexOf(Math.min(...figures))];
    const stops = valley(misfit, near - coarse, near + coarse);
    if (Math.abs(stops) < least) return [];
    const words = `by ${stops > 0 ? '+' : '-'}${Math.abs(stops).toFixed(2)} stops`;
    return [{ words, predict: exposed(context, stops) }];
  },
};
