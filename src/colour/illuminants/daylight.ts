import { daylightComponents } from '../../../shared/tables/daylight-components.js';
import { InputError } from '../../errors/input-error.js';
import { resampleToGrid, type Spectrum } from '../spectrum.js';
import type { Illuminant } from './illuminant.js';

/** Chromaticity of daylight (CIE 15:2004, section 3.1): polynomials in 1/T, then y from x. */
export function daylightChromaticity(kelvin: number): readonly [number, number] {
  const t = 1 / kelvin;
  const x =
    kelvin <= 7000
      ? ((-4.607e9 * t + 2.9678e6) * t + 0.09911e3) * t + 0.244063
      : ((-2.0064e9 * t + 1.9018e6) * t + 0.24748e3) * t + 0.23704;
  return [x, (-3 * x + 2.87) * x - 0.275];
}

/** How much of the components S1 and S2 a daylight of a chromaticity holds beside S0 (CIE 15:2004, section 3.1). */
function componentShares([x, y]: readonly [number, number]): readonly [number, number] {
  const m = 0.0241 + 0.2562 * x - 0.7341 * y;
  return [(-1.3515 - 1.7703 * x + 5.9114 * y) / m, (0.03 - 31.4424 * x + 30.0717 * y) / m];
}

function daylightOf([m1, m2]: readonly [number, number]): Spectrum {
  const { startNm, stepNm, S0, S1, S2 } = daylightComponents;
  return resampleToGrid(
    startNm,
    stepNm,
    S0.map((s0, i) => s0 + m1 * S1[i] + m2 * S2[i]),
  );
}

/**
 * Daylight of a correlated colour temperature: relative spectral power, 100 at 560 nm (CIE 15:2004, section 3.1).
 * @param kelvin 4000..25000
 * @throws InputError outside
 */
export function daylight(kelvin: number): Spectrum {
  if (!(kelvin >= 4000 && kelvin <= 25000))
    throw new InputError({ what: `no daylight is defined at ${kelvin} K`, allowed: '4000 to 25000 K' });
  return daylightOf(componentShares(daylightChromaticity(kelvin)));
}

/**
 * A daylight illuminant by its nominal temperature, as CIE 15:2004 tabulates D50, D55 and D75: the temperature
 * follows the change of c2 from 0.014380 to 0.014388 m K, and the shares are rounded to three decimals.
 */
export function standardDaylight(nominalKelvin: number): Illuminant {
  const round = (share: number) => Math.round(1000 * share) / 1000;
  const [m1, m2] = componentShares(daylightChromaticity((nominalKelvin * 1.4388) / 1.438));
  return {
    title: `daylight D${nominalKelvin / 100}`,
    source: 'CIE 15:2004, section 3.1 and table T.2',
    spectrum: daylightOf([round(m1), round(m2)]),
  };
}
