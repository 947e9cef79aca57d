import { describe, expect, it } from 'vitest';
import { foldOvers } from '../../../src/lut/checks/fold-overs.js';
import { sampleLattice } from '../../../src/lut/lattice.js';
import { contextOf, curvesOf, latticeOf, named } from './contexts.js';

const anywhere = (context: Parameters<typeof foldOvers.ask>[0]) =>
  named(foldOvers.ask(context), 'fold-overs-anywhere');
const fold = (code: number) => Math.abs(2 * code - 1);

describe('fold-overs', () => {
  it.each([
    [0, 'red'],
    [1, 'green'],
    [2, 'blue'],
  ])('of one channel fill the half of the cells in which it falls (%i, %s)', (folded) => {
    const context = contextOf(latticeOf((code, channel) => (channel === folded ? fold(code) : code), 9));
    const finding = anywhere(context);
    expect(finding.figure).toBe(50);
    expect(finding.sentence).toMatch(
      /^Colours change places in 256 of 512 cells .* around input 0\.0625 0\.0625 0\.0625/,
    );
    expect(named(foldOvers.ask(context), 'fold-overs')).toMatchObject({ pass: false, severity: 'fault' });
  });

  it('of two channels at once leave every fourth cell upright twice', () => {
    const context = contextOf(latticeOf((code, channel) => (channel < 2 ? fold(code) : code), 9));
    expect(anywhere(context).figure).toBe(50);
  });

  it('are all cells when two channels are exchanged', () => {
    const swap = sampleLattice((run, count) => {
      for (let i = 0; i < 3 * count; i += 3) [run[i], run[i + 1]] = [run[i + 1], run[i]];
    }, 9);
    expect(anywhere(contextOf(swap)).figure).toBe(100);
  });

  it('are none when all three go round, which is a turn', () => {
    const turn = sampleLattice((run, count) => {
      for (let i = 0; i < 3 * count; i += 3)
        [run[i], run[i + 1], run[i + 2]] = [run[i + 1], run[i + 2], run[i]];
    }, 9);
    expect(anywhere(contextOf(turn)).figure).toBe(0);
  });

  it('are found along any direction in a cell, not only along its edges', () => {
    const lattice = sampleLattice(() => undefined, 3);
    // One node pulled through the far side of its cells.
    lattice.values.set([1.2, 0.5, 0.5], 3 * 13);
    expect(anywhere(contextOf(lattice)).figure).toBeGreaterThan(0);
  });

  it('are none in black and white, nor where all is clipped, nor from six decimals', () => {
    const grey = sampleLattice((run, count) => {
      for (let i = 0; i < 3 * count; i += 3) run.fill((run[i] + run[i + 1] + run[i + 2]) / 3, i, i + 3);
    }, 33);
    grey.values.forEach((value, i) => (grey.values[i] = Number(value.toFixed(6))));
    expect(anywhere(contextOf(grey)).figure).toBe(0);
    expect(anywhere(contextOf(latticeOf(() => 1))).figure).toBe(0);
    expect(anywhere(contextOf(latticeOf((code) => 1 + fold(code)))).figure).toBe(0);
  });

  it('are counted among codes that hold a picture', () => {
    const folded = latticeOf((code) => (code > 0.75 ? 1.5 - code : code));
    // One or three of the channels lie in the last quarter: 3 x 1/4 x 9/16 + 1/64.
    expect(anywhere(contextOf(folded)).figure).toBe(43.75);
    expect(anywhere(contextOf(folded, 'acescct')).figure).toBe(0);
  });

  it('of curves are the entries where they fall', () => {
    const [finding] = foldOvers.ask(
      contextOf(curvesOf((code, channel) => (channel === 1 ? fold(code) : code), 101)),
    );
    expect(finding.figure).toBeCloseTo(100 * (50 / 300), 9);
  });

  it('are looked for in larger tables than devices load, too', () => {
    const finding = anywhere(
      contextOf(latticeOf((code, channel) => (channel === 0 ? fold(code) : code), 161)),
    );
    expect(finding.figure).toBe(50);
  });
});
