import { odd, type TransferFunction } from './transfer-function.js';

/** A pure power of the signal, odd about zero. */
function gamma(exponent: number, source: string): TransferFunction {
  return {
    title: `gamma ${exponent}`,
    source,
    whiteLight: 1,
    decode: odd((signal) => signal ** exponent),
    encode: odd((light) => light ** (1 / exponent)),
  };
}

export const gamma22 = gamma(2.2, 'common practice for computer monitors, no source');
export const gamma24 = gamma(2.4, 'the exponent of ITU-R BT.1886');
export const gamma26 = gamma(2.6, 'SMPTE ST 428-1:2006, the exponent of cinema projection');
