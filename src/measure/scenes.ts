import { densityOf } from '../film/density.js';

/** Edge of the cells of density in which stills are compared: noise moves few colours out of one. */
const cellEdge = 0.15;
/**
 * Share of its colours from which a still shows the scene of another: copies with other noise share more than nine tenths,
 * scenes of different shots at most seven (photographs and simulated scenes, filmed by simulation). One shot cut otherwise
 * lies below, and counts as another scene.
 */
const alikeFrom = 0.8;

/** Share of a still's blocks in each cell of density. */
function histogram(light: Float64Array, openGate: number): Map<string, number> {
  const shares = new Map<string, number>();
  const one = 3 / light.length;
  const place = (v: number) => Math.floor(densityOf(v / openGate) / cellEdge);
  for (let i = 0; i < light.length; i += 3) {
    const cell = `${place(light[i])} ${place(light[i + 1])} ${place(light[i + 2])}`;
    shares.set(cell, (shares.get(cell) ?? 0) + one);
  }
  return shares;
}

/** Share of colours that two stills have in common, 0..1. */
function likeness(a: Map<string, number>, b: Map<string, number>): number {
  let common = 0;
  for (const [cell, share] of a) common += Math.min(share, b.get(cell) ?? 0);
  return common;
}

/**
 * Groups stills by scene, each of them in one group: copies of a still and frames of one shot tell what one still tells,
 * however many they are.
 * @param light of each still, block by block (light-blocks.ts)
 * @param openGate linear level of the light without film
 * @returns indices of stills, in order
 */
export function scenesOf(light: readonly Float64Array[], openGate: number): number[][] {
  const histograms = light.map((still) => histogram(still, openGate));
  return histograms.reduce<number[][]>((scenes, one, n) => {
    const alike = (scene: number[]) => scene.some((i) => likeness(histograms[i], one) >= alikeFrom);
    const joined = [...scenes.filter(alike).flat(), n];
    return [...scenes.filter((scene) => !alike(scene)), joined];
  }, []);
}
