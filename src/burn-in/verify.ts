import type { Primaries } from '../colour/primaries/index.js';
import { primaries } from '../colour/primaries/index.js';
import type { TransferFunction } from '../colour/transfer-functions/index.js';
import { transferFunctions } from '../colour/transfer-functions/index.js';
import { sampleLut } from '../lut/interpolate.js';
import type { Lut } from '../lut/lattice.js';
import type { Picture } from '../picture/picture.js';
import { expandGrey, makePicture } from '../picture/picture.js';
import type { Blocks } from './blocks.js';
import { gatherBlocks, noiseOf, predictedMeans, thinned } from './blocks.js';
import { inTurn } from './causes/cause.js';
import type { CauseContext, CauseName, Variant } from './causes/index.js';
import { causes } from './causes/index.js';
import { fitBlocks } from './colour-map.js';
import type { Doubt } from './doubts.js';
import { causeIsAGuess, findDoubts } from './doubts.js';
import type { Fit, SeenAs } from './fit.js';
import { certainty, fit, misfit } from './fit.js';
import type { Registration } from './register.js';
import { register } from './register.js';
import { requireLight, requireOneFrame, requireSizes } from './require-stills.js';

export interface VerifyOptions {
  /** The curve with which the camera writes light down, range included; sRGB by default. */
  readonly cameraCurve?: TransferFunction;
  /** How the burnt codes are meant to be seen, range included; sRGB by default. */
  readonly curve?: TransferFunction;
  readonly primaries?: Primaries;
  /** Other files that may have been loaded instead. */
  readonly others?: CauseContext['others'];
}

/** One explanation and how well it fits: CIEDE2000, and root mean square in codes of 255. */
export interface Explanation {
  readonly cause: CauseName;
  readonly words: string;
  readonly mean: number;
  readonly p95: number;
  readonly rms: number;
}

export interface Verdict {
  /** True when the device did what the file says. */
  readonly holds: boolean;
  /** CIEDE2000 between what the file says and what was burnt in. */
  readonly mean: number;
  readonly p95: number;
  /** Root mean square of the same, codes of 255. */
  readonly rms: number;
  /** The cause that fits clearly better than the file itself. */
  readonly cause?: Explanation;
  /** Whether the best of the other causes cannot be told from the named one. */
  readonly ambiguous: boolean;
  /** The best form of every cause that was tried, the best fit first. */
  readonly tried: readonly Explanation[];
  /** Why the verdict is worth less than usual. */
  readonly doubts: readonly Doubt[];
  readonly shift: Registration;
  /** Noise between the two stills, codes of 255. */
  readonly noise: number;
  /** Places that were compared. */
  readonly blocks: number;
}

/** CIEDE2000 up to which a burn-in counts as what the file says: mean and 95th percentile (our choice). */
export const verifyLimits = { mean: 1, p95: 2 };

/** A cause is named only when its fit is better beyond chance, and its distance at most this share of the file's. */
const surely = 5;
const clearlyBetter = { plain: 0.7, gentle: 0.95 };

interface Tried extends Explanation {
  readonly fit: Fit;
}

const explanation = (cause: CauseName, words: string, figures: Fit): Tried => {
  const { mean, p95, rms } = figures;
  return { cause, words, mean, p95, rms, fit: figures };
};

const plainly = ({ cause, words, mean, p95, rms }: Tried): Explanation => ({ cause, words, mean, p95, rms });

/** The form of a cause that fits best, judged on a few blocks. */
function bestForm(name: CauseName, context: CauseContext): Variant | undefined {
  const forms = causes[name].variants(context);
  if (forms.length < 2) return forms[0];
  const figures = forms.map(({ predict }) => context.misfit(predict));
  return forms[figures.indexOf(Math.min(...figures))];
}

/** The best form of each cause, the best fit first; of equal fits the order of the registry stands. */
function tryCauses(context: CauseContext, blocks: Blocks, seenAs: SeenAs): Tried[] {
  return (Object.keys(causes) as CauseName[])
    .flatMap((name) => {
      const form = bestForm(name, context);
      return form === undefined ? [] : [explanation(name, form.words, fit(blocks, form.predict, seenAs))];
    })
    .sort((a, b) => a.rms - b.rms);
}

/**
 * A cause that is the one leaves as little as the free fit does, but for a lamp that drifted; one that only happens to lean
 * the same way leaves more than this many times as much, and more than this share of the file's distance.
 */
const onlyLeans = { ofFree: 2.5, ofFile: 0.25 };

/** The first explanation, best fit first, that is better than the file beyond chance and by more than a trifle. */
function named(file: Fit, tried: readonly Tried[], free: Fit): Tried | undefined {
  return tried.find(({ cause, rms, fit: figures }) => {
    if (cause === 'eight-bit') return false;
    if (rms > onlyLeans.ofFree * free.rms && rms > onlyLeans.ofFile * file.rms) return false;
    const share = causes[cause].gentle ? clearlyBetter.gentle : clearlyBetter.plain;
    return rms < share * file.rms && certainty(file, figures) > surely;
  });
}

/** Mean CIEDE2000 below which an unknown look cannot be told from a lamp that warmed up (our choice). */
const unknownLook = 0.5;

/** A change of colour that is smooth but none of the usual ones: some other look. */
function unknown(file: Fit, best: number, free: Fit): Tried | undefined {
  if (file.mean < unknownLook || free.rms > 0.6 * best) return undefined;
  return explanation('another-file', 'a smooth change of colour, but not this one nor a usual mistake', free);
}

/** Which explanation is named, if any. */
function judged(file: Fit, tried: readonly Tried[], free: Fit, inSteps: boolean): Tried | undefined {
  const cause =
    unknown(file, Math.min(file.rms, ...tried.map(({ rms }) => rms)), free) ?? named(file, tried, free);
  const steps = tried.find(({ cause: name }) => name === 'eight-bit');
  return cause ?? (inSteps ? steps : undefined);
}

/** Whether another cause, which would ask for other remedies, fits no worse beyond chance. */
function isAmbiguous(cause: Tried | undefined, tried: readonly Tried[]): boolean {
  if (cause === undefined || causes[cause.cause].gentle) return false;
  const next = tried.find(({ cause: name }) => name !== cause.cause && !causes[name].gentle);
  return next !== undefined && certainty(next.fit, cause.fit) < surely;
}

/** Whether 16-bit codes are 8-bit ones in disguise: all but a few lie on steps of 256 or 257. */
function onEightBitSteps({ bits, data }: Picture): boolean {
  if (bits === 8) return false;
  let off = 0;
  for (const code of data) if (code % 256 !== 0 && code % 257 !== 0) off++;
  return off < 0.001 * data.length;
}

/** The still with three or four channels; codes that are 8-bit ones are taken as such, whatever fills them up. */
function readable(still: Picture): Picture {
  const colour = expandGrey(still);
  if (!onEightBitSteps(colour)) return colour;
  const { width, height, channels, data } = colour;
  const codes = Uint8Array.from(data, (code) => code >> 8);
  return makePicture(width, height, { channels, bits: 8 }, codes);
}

/** Blocks that are enough to choose between the forms of a cause. */
const searchBlocks = 300;

/**
 * Says whether a device did what a LUT file says, from two stills of one frame, one recorded without the look and one
 * with it; and if not, which usual cause fits best. Small shifts between the stills are found and taken out; means of
 * blocks are compared, so that recording noise averages out.
 * @throws InputError when the stills differ in size, are too small or black all over, or do not show the same frame
 */
export function verify(
  plainStill: Picture,
  burntStill: Picture,
  lut: Lut,
  options: VerifyOptions = {},
): Verdict {
  const [plain, burnt] = [readable(plainStill), readable(burntStill)];
  requireSizes(plain, burnt);
  const shift = register(plain, burnt);
  const blocks = gatherBlocks(plain, burnt, shift);
  requireLight(blocks);
  const { srgb } = transferFunctions;
  const seenAs = { curve: options.curve ?? srgb, primaries: options.primaries ?? primaries.bt709 };
  const map = fitBlocks(blocks);
  const free = fit(blocks, map, seenAs);
  requireOneFrame(free, shift);
  const look = inTurn(sampleLut(lut));
  const file = fit(blocks, look, seenAs);
  const within = file.mean <= verifyLimits.mean && file.p95 <= verifyLimits.p95;
  const few = thinned(blocks, Math.ceil(blocks.count / searchBlocks));
  const context: CauseContext = {
    lut,
    look,
    cameraCurve: options.cameraCurve ?? srgb,
    holds: within,
    others: options.others ?? [],
    misfit: (predict) => misfit(few, predict),
  };
  const tried = tryCauses(context, blocks, seenAs);
  const doubts = findDoubts(blocks, shift.tiles, changeMade(blocks, look, seenAs));
  const cause = causeIsAGuess(doubts) ? undefined : judged(file, tried, free, burnt.bits < burntStill.bits);
  return {
    holds: within && (cause === undefined || causes[cause.cause].gentle),
    mean: file.mean,
    p95: file.p95,
    rms: file.rms,
    ...(cause === undefined ? {} : { cause: plainly(cause) }),
    ambiguous: isAmbiguous(cause, tried),
    tried: tried.map(plainly),
    doubts,
    shift,
    noise: noiseOf(blocks, map),
    blocks: blocks.count,
  };
}

/** Mean CIEDE2000 that the look should make on this frame. */
function changeMade(blocks: Blocks, look: Variant['predict'], seenAs: SeenAs): number {
  return fit({ ...blocks, burnt: predictedMeans(blocks, look) }, () => {}, seenAs).mean;
}
