// The library: only re-exports. Everything here runs in a browser as in Node.
export { InputError, type Problem } from './errors/input-error.js';
export { sentence, sentences } from './errors/sentence.js';
export type { Matrix3, Run, Triple } from './maths/matrix3.js';

export { transferFunctions } from './colour/transfer-functions/index.js';
export { cameraLog, type CameraLogParameters } from './colour/transfer-functions/camera-log.js';
export type { TransferFunction } from './colour/transfer-functions/transfer-function.js';
export { primaries, type Primaries } from './colour/primaries/index.js';
export { ciede2000, ciede2000Run, labRun } from './colour/difference.js';

export { dyeSets, type DyeSet } from './film/dye-sets/index.js';
export { simdDyeModels } from './film/engine/simd-dye-model.js';
export { lamps, type Lamp } from './projection/lamps/index.js';

export { lookJsonSchema, lookSchema, type Look } from './look/look-schema.js';
export { checkLook, readLook } from './look/read-look.js';
export { canonicalLook } from './look/canonical-look.js';
export { compileLook } from './look/compile-look.js';

export { type CurveTable, type Lattice, type Lut, sampleLattice } from './lut/lattice.js';
export { sampleLut } from './lut/interpolate.js';
export { type Recording, type RoundTrip, roundTrip, undo, type UndoOptions } from './lut/inverse.js';
export { type ApplyEngine, plainEngine } from './lut/engine/engine.js';
export { simdEngine } from './lut/engine/simd-engine.js';
export { lutFormats } from './lut/formats/index.js';
export type { LutFile, LutFormat } from './lut/formats/lut-format.js';

export type { Picture } from './picture/picture.js';
export { buildLook, type BuildOptions, type Maker } from './jobs/build-look.js';
export { buildCurves } from './jobs/build-curves.js';
export { checkTable, isGood } from './jobs/check-lut.js';
export { applyLook } from './jobs/apply-look.js';
export { previewLook } from './jobs/preview-look.js';
export { type BurnIn, verifyBurnIn } from './jobs/verify-burn-in.js';
export { verdictSentence, verdictSentences } from './jobs/burn-in-words.js';
export type { Verdict } from './burn-in/verify.js';
export { type BurntLut, undoLook, type UndoSettings, type WayBack } from './jobs/undo-look.js';
export { type Signal, type Signals, signalsOf } from './jobs/signal.js';
