import { InputError } from '../../errors/input-error.js';
import { fromFunction, type Spectrum } from '../spectrum.js';

/** The second radiation constant h c / k in m K, exact since the SI of 2019, to the digits given (CODATA 2018). */
export const secondRadiationConstant = 0.01438776877;

/**
 * A Planck radiator: relative spectral power, 100 at 560 nm.
 * @param kelvin its temperature, 100 or more: colder ones have no visible light to relate to 560 nm
 * @param c2 second radiation constant in m K; older tables were made with older values
 * @throws InputError for a colder one, and for what is no finite number
 */
export function planck(kelvin: number, c2: number = secondRadiationConstant): Spectrum {
  if (!(kelvin >= 100 && kelvin < Infinity))
    throw new InputError({ what: `${kelvin} K is not the temperature of a lamp`, allowed: '100 K or more' });
  const exponent = (nm: number) => c2 / (nm * 1e-9 * kelvin);
  const reference = exponent(560);
  // exp(x) - 1 = exp(x) (1 - exp(-x)): the quotient stays finite where exp(x) would not.
  return fromFunction(
    (nm) =>
      100 *
      (560 / nm) ** 5 *
      Math.exp(reference - exponent(nm)) *
      (Math.expm1(-reference) / Math.expm1(-exponent(nm))),
  );
}
