import type { SurfaceName } from '../reflectances/index.js';

/** A sailing boat seen from its side. Of no known class. */
export interface BoatPlan {
  /** Where it floats: metres to the right of the middle and away from the lens. */
  readonly across: number;
  readonly away: number;
  /** Length of the hull and height of the mast, metres. */
  readonly long: number;
  readonly mast: number;
  /** 1: bow to the right, -1: to the left. */
  readonly bow: 1 | -1;
  readonly hull: SurfaceName;
  readonly strake: SurfaceName;
  readonly sail: SurfaceName;
  /** A coloured panel across the mainsail. */
  readonly panel?: SurfaceName;
  /** Clinker planks show. */
  readonly planks?: boolean;
  /** Lean of mast and sails, radians. */
  readonly heel: number;
  /** How many sit in it. */
  readonly crew: 0 | 1 | 2;
}

const plain = { strake: 'varnishedWood', sail: 'sailWhite', crew: 0 } as const;

/** The boats of the regatta, from far to near. */
export const regattaBoats: readonly BoatPlan[] = [
  { ...plain, across: 4, away: 150, long: 6, mast: 8.5, bow: 1, hull: 'paintWhite', heel: 0.06 },
  { ...plain, across: -17, away: 120, long: 6, mast: 8.5, bow: 1, hull: 'paintBlue', heel: 0.07 },
  {
    ...plain,
    across: -13.5,
    away: 98,
    long: 6,
    mast: 8,
    bow: 1,
    hull: 'paintRed',
    heel: 0.06,
    sail: 'cream',
  },
  { ...plain, across: 13, away: 78, long: 6, mast: 8, bow: -1, hull: 'paintGreen', heel: -0.06 },
  {
    across: 4.3,
    away: 34,
    long: 5.6,
    mast: 7.2,
    bow: -1,
    hull: 'paintBlue',
    strake: 'paintWhite',
    sail: 'sailWhite',
    heel: -0.06,
    crew: 1,
  },
  {
    across: -6.9,
    away: 45,
    long: 5.4,
    mast: 7,
    bow: 1,
    hull: 'paintRed',
    strake: 'paintWhite',
    sail: 'sailWhite',
    panel: 'red',
    heel: 0.08,
    crew: 1,
  },
  {
    across: -0.15,
    away: 16.5,
    long: 5.2,
    mast: 6.8,
    bow: 1,
    hull: 'varnishedWood',
    strake: 'plainWood',
    sail: 'sailWhite',
    planks: true,
    heel: 0.06,
    crew: 2,
  },
];
