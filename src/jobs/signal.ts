// Jobs: what a command or the page does, from parts to result. Knows every part below; knows no disk, terminal or screen.
import { primaries } from '../colour/primaries/index.js';
import { rgbToRgb, rgbToXyz } from '../colour/primaries/rgb-matrix.js';
import { type SignalRange, toFull } from '../colour/signal-range.js';
import { transferFunctions } from '../colour/transfer-functions/index.js';
import { canonicalJson } from '../look/canonical-look.js';
import type { Look } from '../look/look-schema.js';
import { deliveryOf } from '../look/sections/delivery.js';
import {
  type Encoding,
  encodingField,
  type PrimariesChoice,
  primariesField,
  primariesOf,
  transferFunctionOf,
} from '../look/sections/signal.js';
import { type Run, transformRun3 } from '../maths/matrix3.js';

/** How code values stand for light. */
export interface Signal {
  readonly encoding: Encoding;
  readonly primaries: PrimariesChoice;
  readonly range: SignalRange;
  /** Linear level of the light without film, where it is known. */
  readonly openGate?: number | undefined;
}

/** An ordinary screen. */
export const screenSignal: Signal = { encoding: 'srgb', primaries: 'bt709', range: 'full' };

/** What goes into a look and what comes out of it. */
export interface Signals {
  readonly input: Signal;
  readonly output: Signal;
}

/** What a LUT is taken to take and give where nothing says it. */
export const screenSignals: Signals = { input: screenSignal, output: screenSignal };

const whiteOf = (encoding: Encoding) => transferFunctionOf(encoding).whiteLight;

/** Linear level that is shown as white: diffuse white, or an open gate that is brighter. */
export const shownWhite = ({ encoding, openGate = 0 }: Signal): number =>
  Math.max(whiteOf(encoding), openGate);

export function signalsOf(look: Look): Signals {
  const { encoding, primaries, range, openGate } = look.camera;
  const delivery = deliveryOf(look.delivery, look.camera);
  const gateIn = (delivered: Encoding) => openGate && (openGate / whiteOf(encoding)) * whiteOf(delivered);
  return {
    input: { encoding, primaries, range, openGate },
    output: {
      encoding: delivery.encoding,
      primaries: delivery.primaries,
      range: delivery.range,
      openGate: gateIn(delivery.encoding),
    },
  };
}

const gateWords = ', open gate at ';

/** A signal in words that {@link signalFromText} reads back: encoding, primaries, range, open gate. */
export function signalText({ encoding, primaries, range, openGate }: Signal): string {
  const name = (choice: Encoding | PrimariesChoice) =>
    typeof choice === 'string' ? choice : canonicalJson(choice);
  const gate = openGate === undefined ? '' : `${gateWords}${String(openGate)}`;
  return `${name(encoding)} ${name(primaries)} ${range}${gate}`;
}

/** Whether an ordinary screen shows the signal's code values as they are. */
export const fitsScreen = (signal: Signal): boolean =>
  shownWhite(signal) === 1 && signalText({ ...signal, openGate: undefined }) === signalText(screenSignal);

/** A name, or an object spelt out in JSON. */
function choiceOf(text: string): unknown {
  try {
    return text.startsWith('{') ? JSON.parse(text) : text;
  } catch {
    return undefined;
  }
}

/** Reads what {@link signalText} wrote; undefined for anything else. */
export function signalFromText(text: string): Signal | undefined {
  const [signal, gateText, ...after] = text.split(gateWords);
  const [encodingText, primariesText, range, ...more] = signal.split(' ');
  const encoding = encodingField('').safeParse(choiceOf(encodingText));
  const colours = primariesField('').safeParse(choiceOf(primariesText ?? ''));
  if (more.length > 0 || after.length > 0 || !encoding.success || !colours.success) return undefined;
  if (range !== 'full' && range !== 'legal') return undefined;
  const openGate = gateText === undefined ? undefined : Number(gateText);
  if (openGate !== undefined && !(openGate > 0 && openGate < Infinity)) return undefined;
  return { encoding: encoding.data, primaries: colours.data, range, openGate };
}

/** Code values -> linear light in the signal's primaries, white 1. */
function toLight(signal: Signal): Run {
  const { encoding, range } = signal;
  const { decode } = transferFunctionOf(encoding);
  const white = shownWhite(signal);
  return (values, count) => {
    for (let i = 0; i < 3 * count; i++) values[i] = decode(toFull(values[i], range)) / white;
  };
}

/** Code values -> CIE XYZ, Y of white 1. */
export function signalToXyz(signal: Signal): Run {
  const light = toLight(signal);
  const matrix = rgbToXyz(primariesOf(signal.primaries));
  return (values, count) => {
    light(values, count);
    transformRun3(matrix, values, count);
  };
}

/**
 * Code values of a signal -> code values that look the same on an ordinary sRGB screen, as far as that can show them.
 * Undefined where they are the same anyway.
 */
export function toScreen(signal: Signal): Run | undefined {
  if (fitsScreen(signal)) return undefined;
  const light = toLight(signal);
  const matrix = rgbToRgb(primariesOf(signal.primaries), primaries.bt709);
  const { encode } = transferFunctions.srgb;
  return (values, count) => {
    light(values, count);
    transformRun3(matrix, values, count);
    for (let i = 0; i < 3 * count; i++) values[i] = encode(Math.min(1, Math.max(0, values[i])));
  };
}
