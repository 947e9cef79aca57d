import { describe, expect, it } from 'vitest';
import { checkTable, isGood } from '../../src/jobs/check-lut.js';
import { signalsOf } from '../../src/jobs/signal.js';
import { compileLook } from '../../src/look/compile-look.js';
import { readLook } from '../../src/look/read-look.js';
import { type Lattice, sampleLattice } from '../../src/lut/lattice.js';
import { named } from '../lut/checks/contexts.js';

const lookOf = (fields: object) => readLook(JSON.stringify({ name: 'x', ...fields }), 'x.json');
/** A strongly faded reel as a lamp showed it: flare lifts black, so that a strong colour has less of its opposite than black has. */
const projected = lookOf({
  camera: { openGate: 0.87 },
  stock: { dyes: 'reversal-late', loss: { cyan: 0.6, magenta: 0.07, yellow: 0.17 } },
  projector: { lamp: { kelvin: 3200 }, flare: 0.004 },
  room: { surround: 'dark', adaptation: 1, displaySurround: 'dim' },
  rolloff: { shoulderStart: 0.65, shoulderSoftness: 0.35 },
});
const tableOf = (look: typeof projected) => sampleLattice(compileLook(look), 33);
const faultsOf = (findings: ReturnType<typeof checkTable>) =>
  findings.filter((finding) => !isGood([finding])).map(({ sentence }) => sentence);

describe('a table that undoes fading', () => {
  it('is good when the greys of that film rise, though what it recorded as grey was coloured', () => {
    const table = tableOf(projected);
    expect(faultsOf(checkTable(table, signalsOf(projected), projected))).toEqual([]);
    const alone = named(checkTable(table, signalsOf(projected)), 'neutral-rises');
    expect(alone).toMatchObject({ pass: false, severity: 'fault' });
  });

  it('is not good when the greys of that film fall', () => {
    const table: Lattice = tableOf(projected);
    // Light greys of this film lie about these nodes.
    const values = table.values.map((value, i) => {
      const [r, g] = [Math.floor(i / 3) % 33, Math.floor(i / 99) % 33];
      return r === 24 && g >= 20 && g <= 26 ? value - 0.2 : value;
    });
    const finding = named(checkTable({ ...table, values }, signalsOf(projected), projected), 'neutral-rises');
    expect(finding).toMatchObject({ pass: false, severity: 'fault' });
    expect(finding.sentence).toMatch(
      /^A brighter grey of the film comes out darker by .* at input 0\.\d+ 0\.\d+ 0\.\d+\)/,
    );
  });

  it('that takes out a stain has its highlights counted up to clear film, which the stain darkens', () => {
    const stained = lookOf({
      camera: { openGate: 0.85 },
      stock: { stain: { red: 0.03, green: 0.06, blue: 0.15 } },
    });
    const table = tableOf(stained);
    expect(faultsOf(checkTable(table, signalsOf(stained), stained))).toEqual([]);
    expect(faultsOf(checkTable(table, signalsOf(stained))).join()).toMatch(/Highlights burn out/);
  });
});
