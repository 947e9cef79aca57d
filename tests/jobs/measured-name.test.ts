import { describe, expect, it } from 'vitest';
import { nameOf, noteOf } from '../../src/jobs/measured-name.js';
import type { Measurement } from '../../src/measure/index.js';
import { makePicture } from '../../src/picture/picture.js';

const picture = makePicture(1, 1, { channels: 3, bits: 8 });
const stillsOf = (...names: string[]) => names.map((name) => ({ name, picture }));
const measurement = {
  leftAsItIs: false,
  loss: { cyan: 0.4, magenta: 0, yellow: 0.1 },
  confidence: { word: 'fair' },
} as Measurement;
/** A look as the last measurement left it. */
const measured = (name: string, stills: ReturnType<typeof stillsOf>) => ({
  name,
  note: noteOf('', stills, measurement, true),
});

describe('the name of a measured look', () => {
  it.each([
    [['box 2/a.png'], 'Correction, measured from a.png'],
    [['a.png', 'b.png'], 'Correction, measured from a.png and 1 more'],
    [['a.png', 'b.png', 'c.png'], 'Correction, measured from a.png and 2 more'],
  ])('says of %j how many stills it comes from', (names, name) => {
    expect(nameOf(undefined, stillsOf(...names))).toBe(name);
  });

  it('puts the stills of a new measurement in the place of older ones, whatever they are called', () => {
    const first = stillsOf('Reel 7, the regatta, measured later.png', 'b.png');
    const once = measured(nameOf({ name: 'Club evening', note: '' }, first), first);
    expect(nameOf(once, stillsOf('c.png'))).toBe('Club evening, measured from c.png');
  });

  it('leaves a name alone that no measurement gave', () => {
    const like = { name: 'Hall, measured from the projector', note: 'Ours.' };
    expect(nameOf(like, stillsOf('c.png'))).toBe('Hall, measured from the projector, measured from c.png');
  });

  it('keeps both ends of a long name of a still, where names differ', () => {
    const name = nameOf(undefined, stillsOf(`Harbour club ${'x'.repeat(150)} 001.png`, 'b.png'));
    expect(name).toMatch(/^Correction, measured from Harbour club x+\.\.\.x+ 001\.png and 1 more$/);
    expect(name.length).toBeLessThanOrEqual(200);
  });
});
