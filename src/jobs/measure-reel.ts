import { transferFunctions } from '../colour/transfer-functions/index.js';
import { InputError } from '../errors/input-error.js';
import type { DyeSetName } from '../film/dye-sets/index.js';
import { canonicalJson } from '../look/canonical-look.js';
import type { Look } from '../look/look-schema.js';
import { checkLook } from '../look/read-look.js';
import type { Camera } from '../look/sections/camera.js';
import { cameraSchema } from '../look/sections/camera.js';
import {
  checkMarks,
  type Confidence,
  type Marks,
  type Measurement,
  measureReel,
  type Still,
} from '../measure/index.js';
import { gateDoubts, greyDoubts, weighMarks } from './mark-doubts.js';
import { nameOf, noteOf } from './measured-name.js';
import { measuredStills } from './measured-stills.js';
import { marksWithout, type UnusedStill, unusedStills } from './usable-stills.js';

/** A look file as it stands, and what it reads as. */
export interface LikeLook {
  readonly look: Look;
  /** The file's own JSON: what is not measured is written again just so. */
  readonly fields: Readonly<Record<string, unknown>>;
}

export interface ReelRequest {
  /** Stills of one reel; names as the user gave them. */
  readonly stills: readonly Still[];
  readonly marks: Marks;
  readonly dyes: DyeSetName | 'auto';
  /** Linear level of the light without film on the camera's scale, when it is known. */
  readonly openGate?: number;
  /** What the stills were written with, over what `like` says; sRGB and BT.709 where neither says it. */
  readonly written?: Partial<Pick<Camera, 'encoding' | 'primaries'>>;
  readonly like?: LikeLook;
}

export interface MeasuredReel {
  readonly measurement: Measurement;
  readonly look: Look;
  /** The look file: JSON on several lines. */
  readonly text: string;
  /** What was marked, and of that what can be. */
  readonly marks: Marks;
  readonly usable: Marks;
  /** Stills that tell nothing, and were left out. */
  readonly unused: readonly UnusedStill[];
}

/** The camera that a reel's stills come from. */
function cameraOfReel({ like, written }: ReelRequest): Camera {
  return { ...(like?.look.camera ?? cameraSchema.parse({})), ...written };
}

/** Four decimals: finer than anything measured, and a file that people can read. */
const rounded = (value: number) => Number(value.toFixed(4)) + 0;

const roundedAll = <T extends object>(values: T): T =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, rounded(value as number)])) as T;

/**
 * How a correction alone ends: film itself lies below, its base takes more; but the bare light in a perforation, which
 * holds no stain to take out, would be burnt out.
 */
const softEnd = { rolloff: { shoulderStart: 0.95, shoulderSoftness: 1 } };

/** The look as fields of JSON: those of `like`, with camera and stock filled in. */
function lookFields(request: ReelRequest, camera: Camera, measurement: Measurement): Record<string, unknown> {
  const { stills, like, written } = request;
  const { $schema, name, note, camera: likeCamera, stock, ...rest } = like?.fields ?? {};
  const alone = ['{}', canonicalJson(softEnd)].includes(canonicalJson(rest));
  const sections = !alone ? rest : measurement.leftAsItIs ? {} : softEnd;
  const openGate = Number(measurement.openGate.toPrecision(4));
  const given =
    like === undefined
      ? { encoding: camera.encoding, primaries: camera.primaries, range: camera.range }
      : likeCamera;
  // Sections in the order of the light path, whatever order the file had them in.
  return {
    ...($schema === undefined ? {} : { $schema }),
    name: nameOf(like?.look, stills),
    note: noteOf(like?.look.note ?? '', stills, measurement, alone).slice(0, 4000),
    camera: { ...(given as object), ...written, openGate, flare: measurement.flare || undefined },
    stock: {
      dyes: measurement.dyes,
      loss: roundedAll(measurement.loss),
      stain: roundedAll(measurement.stain),
    },
    ...sections,
  };
}

/** Where a mark cannot be what it is said to be, the others are to be looked at again. */
const doubting = (confidence: Confidence, more: readonly string[]): Confidence =>
  more.length === 0 ? confidence : { ...confidence, word: 'thin', reasons: [...more, ...confidence.reasons] };

/** @throws InputError for a level that no look can name: the stills cannot have been written so */
function requireGate(level: number): number {
  if (cameraSchema.shape.openGate.safeParse(level).success) return level;
  throw new InputError({
    what: `the light without film would lie at ${level.toPrecision(3)} times diffuse white, so the stills were not written as is said`,
    hint: 'Give the encoding that the camera wrote them with.',
  });
}

/**
 * Measures a reel and makes a look of what was found: the camera's open gate and the stock section are filled in, all else
 * stays as `like` has it, its name and note with what was measured added; without `like` it is a correction alone.
 * @throws InputError for stills and marks that cannot be measured
 */
export function measureReelToLook(request: ReelRequest): MeasuredReel {
  const camera = cameraOfReel(request);
  const { pictures, encoding, scale } = measuredStills(
    request.stills.map(({ picture }) => picture),
    camera,
  );
  checkMarks(request.marks, pictures);
  const unused = unusedStills(request.stills, pictures, encoding);
  const isUsed = (_: unknown, i: number) => unused.every(({ index }) => index !== i);
  const { usable, doubts } = weighMarks(request.stills, request.marks);
  const given = request.openGate === undefined ? undefined : request.openGate / scale;
  const ofGate = given === undefined ? [] : gateDoubts(pictures, transferFunctions[encoding].encode(given));
  const found = measureReel(
    request.stills.map(({ name }, i) => ({ name, picture: pictures[i] })).filter(isUsed),
    {
      encoding,
      marks: marksWithout(usable, unused),
      dyes: request.dyes,
      ...(given === undefined || ofGate.length > 0 ? {} : { openGate: given }),
    },
  );
  const confidence = doubting(found.confidence, [...doubts, ...ofGate, ...greyDoubts(found.points)]);
  const measurement = { ...found, openGate: requireGate(found.openGate * scale), confidence };
  const fields = lookFields({ ...request, stills: request.stills.filter(isUsed) }, camera, measurement);
  return {
    measurement,
    look: checkLook(fields, 'the measured look'),
    text: `${JSON.stringify(fields, null, 2)}\n`,
    marks: request.marks,
    usable,
    unused,
  };
}

/** The measured correction alone, as it is written without a look to be like. */
export function correctionOf({ look, measurement }: Pick<MeasuredReel, 'look' | 'measurement'>): Look {
  const { name, camera, stock } = look;
  const end = measurement.leftAsItIs ? {} : softEnd;
  return checkLook({ name, camera, stock, ...end }, canonicalJson(name));
}
