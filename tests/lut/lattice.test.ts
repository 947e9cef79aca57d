import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { isDomain, isUnitDomain, nodeCode, nodePosition, sampleLattice } from '../../src/lut/lattice.js';

const identity = () => undefined;

describe('a lattice', () => {
  it('holds its nodes with red fastest, then green, blue slowest', () => {
    const { values, size } = sampleLattice(identity, 3);
    const row = (r: number, g: number, b: number) => {
      const at = 3 * (r + size * g + size * size * b);
      return [...values.subarray(at, at + 3)];
    };
    expect(values.length).toBe(81);
    expect(row(1, 0, 0)).toEqual([0.5, 0, 0]);
    expect(row(0, 1, 0)).toEqual([0, 0.5, 0]);
    expect(row(0, 2, 1)).toEqual([0, 1, 0.5]);
    expect(row(2, 2, 2)).toEqual([1, 1, 1]);
  });

  it.each([2, 17, 33, 65])(
    'of %i nodes a side hands whole lines to the transform, each node once',
    (size) => {
      let nodes = 0;
      const { values } = sampleLattice((run, count) => {
        expect(run.length).toBe(3 * count);
        expect(count % size).toBe(0);
        nodes += count;
        for (let i = 0; i < run.length; i++) run[i] = 1 - run[i];
      }, size);
      expect(nodes).toBe(size ** 3);
      expect([...values.subarray(0, 3)]).toEqual([1, 1, 1]);
      expect([...values.subarray(-3)]).toEqual([0, 0, 0]);
    },
  );

  it('takes a domain for each channel and meets both ends exactly', () => {
    const lattice = sampleLattice(identity, 7, [-0.1, 0, 0.3], [1.1, 0.7, 5]);
    expect([...lattice.values.subarray(0, 3)]).toEqual([-0.1, 0, 0.3]);
    expect([...lattice.values.subarray(-3)]).toEqual([1.1, 0.7, 5]);
    expect(isUnitDomain(lattice)).toBe(false);
    expect(isUnitDomain(sampleLattice(identity, 2))).toBe(true);
  });

  it('holds 256 nodes a side', () => {
    expect(sampleLattice(identity, 256).values.length).toBe(3 * 256 ** 3);
  });

  it.each([1, 0, -3, 257, 2.5, NaN, Infinity])('refuses a size of %s', (size) => {
    expect(() => sampleLattice(identity, size)).toThrow(InputError);
  });

  it('refuses a domain that is empty, reversed, not finite or too wide for a double', () => {
    for (const [min, max] of [
      [0, 0],
      [1, 0],
      [0, NaN],
      [0, Infinity],
      [-1e308, 1e308],
    ]) {
      expect(isDomain([min, 0, 0], [max, 1, 1])).toBe(false);
      expect(() => sampleLattice(identity, 2, [0, min, 0], [1, max, 1])).toThrow(RangeError);
    }
  });
});

describe('a place among the nodes', () => {
  it('never leaves the table, and takes what is not a number for the first node', () => {
    const places = [NaN, -Infinity, -1, 0, 0.5, 1, 2, Infinity].map((code) => nodePosition(code, 0, 1, 4));
    expect(places).toEqual([0, 0, 0, 0, 2, 4, 4, 4]);
  });

  it('undoes the code of a node', () => {
    for (let i = 0; i < 33; i++) expect(nodePosition(nodeCode(i, 33, -2, 3), -2, 3, 32)).toBeCloseTo(i, 12);
  });
});
