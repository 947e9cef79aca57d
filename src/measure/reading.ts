import { type TransferFunctionName, transferFunctions } from '../colour/transfer-functions/index.js';
import { leastTold } from '../film/scan-flare.js';
import type { Triple } from '../maths/matrix3.js';
import type { Picture } from '../picture/picture.js';
import type { DyeSpace } from './dye-space.js';
import { lightBlocks } from './light-blocks.js';
import { checkMarks, densitiesOf, type MarkKind, type MarkReading, type Marks, readMarks } from './marks.js';
import { openGate, type OpenGate } from './open-gate.js';
import { scenesOf } from './scenes.js';

/** What was read from stills and marks before anything is reckoned. */
export interface Reading {
  readonly gate: OpenGate;
  /** Each still's light, block by block (light-blocks.ts). */
  readonly light: readonly Float64Array[];
  /** Which stills show one scene (scenes.ts): their indices, by scene. */
  readonly scenes: readonly (readonly number[])[];
  readonly marks: Readonly<Record<MarkKind, readonly MarkReading[]>>;
}

/** @throws InputError for marks outside the stills */
export function readStills(
  pictures: readonly Picture[],
  options: { encoding: TransferFunctionName; marks?: Marks; openGate?: number },
): Reading {
  const encoding = transferFunctions[options.encoding];
  const given = options.marks ?? {};
  checkMarks(given, pictures);
  const blocks = pictures.map((picture) =>
    lightBlocks(picture, encoding, { x: 0, y: 0, width: picture.width, height: picture.height }),
  );
  const marks = {
    black: readMarks(given.black, pictures, encoding, 'black'),
    clear: readMarks(given.clear, pictures, encoding, 'clear'),
    film: readMarks(given.film, pictures, encoding, 'film'),
    neutral: readMarks(given.neutral, pictures, encoding, 'neutral'),
  };
  const gate = openGate(blocks, marks.clear, encoding, options.openGate);
  const light = blocks.map((still) => still.light);
  return { gate, light, scenes: scenesOf(light, gate.level), marks };
}

/** Equivalent amounts of a marked light, the scanner's flare (a share of the open gate) taken off. */
export function amountsOf(light: Triple, { level }: OpenGate, space: DyeSpace, flare: number): Triple {
  const own = light.map((v) => Math.max(leastTold, v / level - flare) * level) as unknown as Triple;
  const run = Float64Array.from(densitiesOf(own, level));
  space.toAmounts(run);
  return [run[0], run[1], run[2]];
}
