import type { FigurePlan } from '../../../shared/demo/layout/figure.js';
import { smoothStep } from '../drawing/noise.js';
import type { Stroke } from '../drawing/relief-colour.js';
import { addEllipsoid, addLimb, type Relief } from '../drawing/relief.js';
import type { OnHead } from './features.js';
import type { Outfit } from './wardrobe.js';

/** A hat on a head one unit high. */
export function addHat(relief: Relief, { hat, turn }: FigurePlan, { hat: made }: Outfit, at: OnHead): void {
  if (!hat || !made) return;
  const { kind } = hat;
  const side = Math.abs(Math.sin(turn));
  if (kind === 'brim') {
    addEllipsoid(relief, made, { centre: at(0, 0.27, 0.08), radii: [0.78, 0.105, 0.72] });
    addEllipsoid(relief, made, {
      centre: at(0, 0.42, 0),
      radii: [0.4 + 0.04 * side, 0.25, 0.44],
      melt: 0.04,
    });
  } else if (kind === 'peak') {
    addEllipsoid(relief, made, { centre: at(Math.PI, 0.27, 0.04), radii: [0.42 + 0.05 * side, 0.28, 0.47] });
    addEllipsoid(relief, made, { centre: at(0, 0.22, 0.38), radii: [0.31, 0.065, 0.3], melt: 0.03 });
  } else {
    addEllipsoid(relief, made, { centre: at(Math.PI, 0.28, 0.03), radii: [0.43 + 0.04 * side, 0.36, 0.47] });
    addLimb(relief, made, {
      from: at(-1.2, 0.19, 0.33),
      to: at(1.2, 0.19, 0.33),
      radii: [0.115, 0.115],
      melt: 0.03,
    });
    addEllipsoid(relief, made, { centre: at(Math.PI, 0.68, 0.02), radii: [0.14, 0.13, 0.14] });
  }
}

/** The ribbon of a hat with a brim, the stripe of a knitted one. */
export function hatStrokes({ hat }: FigurePlan, { hat: made, hatBand }: Outfit, at: OnHead): Stroke[] {
  if (!hat || !made || !hatBand || hat.kind === 'peak') return [];
  const { kind } = hat;
  const [x, y] = at(0, kind === 'brim' ? 0.345 : 0.43, 0);
  const [half, thick] = kind === 'brim' ? [0.41, 0.05] : [0.46, 0.035];
  return [
    {
      surface: hatBand,
      on: made,
      bounds: [x - half, y - 0.25, x + half, y + 0.15],
      cover: (px, py) => {
        const sag = 0.05 * (1 - ((px - x) / half) ** 2);
        return 0.9 * smoothStep(thick + 0.008, thick - 0.008, Math.abs(py - y + sag));
      },
    },
  ];
}
