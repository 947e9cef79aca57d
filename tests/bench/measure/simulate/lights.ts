import { curve, skewBell, type Between, type Curve } from './grid.js';

/** Planck's law, relative to 560 nm. */
export const planck = (kelvin: number): Curve => {
  const power = (nm: number) => nm ** -5 / (Math.exp(1.4388e7 / (nm * kelvin)) - 1);
  return curve((nm) => power(nm) / power(560));
};

/** A clear sky: sunlight scattered with about the fourth power, mixed with haze. */
export const skyLight = (haze: number): Curve =>
  curve((nm) => ((1 - haze) * (560 / nm) ** 3.6 + haze) * (0.75 + 0.25 * Math.tanh((nm - 400) / 40)));

/** Phosphor-converted light-emitting diode. */
const whiteLed = (between: Between): Curve => {
  const [pump, pumpWidth, share] = [between(446, 458), between(8, 12), between(0.75, 1.15)];
  const [peak, left, right] = [between(545, 575), between(42, 52), between(58, 75)];
  return curve(
    (nm) => share * skewBell(nm, pump, pumpWidth, pumpWidth * 1.2) + skewBell(nm, peak, left, right),
  );
};

/** Diode with a red phosphor or emitter beside the yellow one, as sold for colour work. */
const fullLed = (between: Between): Curve => {
  const [pump, share] = [between(440, 460), between(0.5, 0.9)];
  const [red, redShare, cyanShare] = [between(615, 640), between(0.5, 0.85), between(0.25, 0.5)];
  return curve(
    (nm) =>
      share * skewBell(nm, pump, 9, 12) +
      cyanShare * skewBell(nm, 490, 25, 30) +
      0.75 * skewBell(nm, 545, 38, 55) +
      redShare * skewBell(nm, red, 40, 32),
  );
};

const halogen = (between: Between): Curve => {
  const [kelvin, cut] = [between(2900, 3300), between(690, 720)];
  const power = planck(kelvin);
  return curve((nm) => power[(nm - 380) / 5] / (1 + Math.exp((nm - cut) / 8)));
};

/** Xenon arc with its blue lines smeared out. */
const xenon = (between: Between): Curve => {
  const [kelvin, lines] = [between(5400, 6300), between(0.1, 0.25)];
  const power = planck(kelvin);
  return curve(
    (nm) =>
      power[(nm - 380) / 5] *
      (1 + lines * skewBell(nm, 467, 7, 12) + 0.4 * lines * skewBell(nm, 620, 10, 14)),
  );
};

/** Three narrow emitters, mixed to white. */
const threeEmitters = (between: Between): Curve => {
  const [blue, green, red] = [between(450, 462), between(525, 538), between(622, 634)];
  return curve(
    (nm) => skewBell(nm, blue, 11, 13) + 0.9 * skewBell(nm, green, 16, 20) + 1.1 * skewBell(nm, red, 11, 9),
  );
};

export const tuningLights = { whiteLed, halogen };
export const asideLights = { fullLed, xenon, threeEmitters };
