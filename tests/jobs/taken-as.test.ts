import { expect, it } from 'vitest';
import { screenSignal, signalsOf } from '../../src/jobs/signal.js';
import { readLook } from '../../src/look/read-look.js';
import { takenAs } from '../../src/jobs/taken-as.js';

const taken = (camera: object) =>
  takenAs(signalsOf(readLook(JSON.stringify({ name: 'x', camera }), 'x.json')).input);

it('says what a still is taken as, where that is no ordinary picture', () => {
  expect(takenAs(screenSignal)).toBe('');
  expect(taken({ openGate: 0.9 })).toBe('');
  expect(taken({ encoding: 'hlg', primaries: 'bt2020', range: 'legal' })).toBe(
    'taken as HLG, BT.2020, legal',
  );
});
