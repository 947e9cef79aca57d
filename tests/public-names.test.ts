import { expect, it } from 'vitest';
import * as library from '../src/index.js';

/** Every value the library exports: none appears or goes by accident. */
const names = [
  'InputError',
  'applyLook',
  'buildCurves',
  'buildLook',
  'cameraLog',
  'canonicalLook',
  'checkLook',
  'checkTable',
  'ciede2000',
  'ciede2000Run',
  'compileLook',
  'dyeSets',
  'isGood',
  'labRun',
  'lamps',
  'lookJsonSchema',
  'lookSchema',
  'lutFormats',
  'plainEngine',
  'previewLook',
  'primaries',
  'readLook',
  'roundTrip',
  'sampleLattice',
  'sampleLut',
  'sentence',
  'sentences',
  'signalsOf',
  'simdDyeModels',
  'simdEngine',
  'transferFunctions',
  'undo',
  'undoLook',
  'verdictSentence',
  'verdictSentences',
  'verifyBurnIn',
];

it('the library exports just these names', () => {
  expect(Object.keys(library).sort()).toEqual(names.sort());
});
