import { cieTestColours } from '../../../../shared/demo/cie-test-colours.js';

const { samples } = cieTestColours;

/** Spectral radiance factors of the 14 CIE test colour samples, 380 to 780 nm in steps of 5 nm, by what they look like. */
export const testColourSamples = {
  greyishRed: samples.tcs01.reflectance,
  greyishYellow: samples.tcs02.reflectance,
  yellowGreen: samples.tcs03.reflectance,
  yellowishGreen: samples.tcs04.reflectance,
  bluishGreen: samples.tcs05.reflectance,
  lightBlue: samples.tcs06.reflectance,
  lightViolet: samples.tcs07.reflectance,
  reddishPurple: samples.tcs08.reflectance,
  strongRed: samples.tcs09.reflectance,
  strongYellow: samples.tcs10.reflectance,
  strongGreen: samples.tcs11.reflectance,
  strongBlue: samples.tcs12.reflectance,
  skin: samples.tcs13.reflectance,
  leaf: samples.tcs14.reflectance,
} as const;
