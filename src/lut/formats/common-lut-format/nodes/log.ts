import type { NodeKind, NodeSource } from '../node.js';
import { childrenOf } from '../node.js';
import type { Element } from '../xml.js';

/** A logarithmic curve: S-2014-006 (CLF v3.0), Log. */
interface LogCurve {
  readonly base: number;
  readonly logSideSlope: number;
  readonly logSideOffset: number;
  readonly linSideSlope: number;
  readonly linSideOffset: number;
  /** Camera styles only: at and below it the curve is a straight line. */
  readonly linSideBreak?: number;
  readonly linearSlope?: number;
}

/** The least argument of a logarithm: the smallest normal single-precision number, as readers take it. */
const tiny = 2 ** -126;

const ln = (x: number) => Math.log(Math.max(x, tiny));

function toLog(p: LogCurve, x: number): number {
  return (p.logSideSlope * ln(p.linSideSlope * x + p.linSideOffset)) / Math.log(p.base) + p.logSideOffset;
}

function toLin(p: LogCurve, y: number): number {
  return (p.base ** ((y - p.logSideOffset) / p.logSideSlope) - p.linSideOffset) / p.linSideSlope;
}

/** The straight part of a camera curve: its slope, offset and end, continuous in slope unless a slope is given. */
function straightPart(p: LogCurve) {
  const { linSideBreak = 0 } = p;
  const steep = (p.linSideSlope * linSideBreak + p.linSideOffset) * Math.log(p.base);
  const slope = p.linearSlope ?? (p.logSideSlope * p.linSideSlope) / steep;
  const offset = toLog(p, linSideBreak) - slope * linSideBreak;
  return { slope, offset, end: slope * linSideBreak + offset };
}

function cameraCurve(p: LogCurve) {
  const { slope, offset, end } = straightPart(p);
  return {
    toLog: (x: number) => (x > p.linSideBreak! ? toLog(p, x) : slope * x + offset),
    toLin: (y: number) => (y > end ? toLin(p, y) : (y - offset) / slope),
  };
}

const plain = (base: number): LogCurve => ({
  base,
  logSideSlope: 1,
  logSideOffset: 0,
  linSideSlope: 1,
  linSideOffset: 0,
});

type Curve = (value: number) => number;

/** What each style makes of its parameters. */
const styles = {
  log10: () => (x) => toLog(plain(10), x),
  log2: () => (x) => toLog(plain(2), x),
  antiLog10: () => (y) => toLin(plain(10), y),
  antiLog2: () => (y) => toLin(plain(2), y),
  linToLog: (p) => (x) => toLog(p, x),
  logToLin: (p) => (y) => toLin(p, y),
  cameraLinToLog: (p) => cameraCurve(p).toLog,
  cameraLogToLin: (p) => cameraCurve(p).toLin,
} satisfies Record<string, (parameters: LogCurve) => Curve>;

type StyleName = keyof typeof styles;

function curveOf({ refuse }: NodeSource, element: Element, camera: boolean): LogCurve {
  const number = (name: string): number | undefined => {
    const text = element.attributes.get(name)?.trim();
    if (text === undefined) return undefined;
    const value = text === '' ? NaN : Number(text);
    return Number.isFinite(value) ? value : refuse(element.at, `${name} is not a finite number`);
  };
  const [linSideBreak, linearSlope] = [number('linSideBreak'), number('linearSlope')];
  const curve: LogCurve = {
    base: number('base') ?? 2,
    logSideSlope: number('logSideSlope') ?? 1,
    logSideOffset: number('logSideOffset') ?? 0,
    linSideSlope: number('linSideSlope') ?? 1,
    linSideOffset: number('linSideOffset') ?? 0,
    ...(camera ? { linSideBreak, linearSlope } : {}),
  };
  if (!(curve.base > 0) || curve.base === 1) refuse(element.at, 'the base of a Log is above 0 and not 1');
  if (curve.logSideSlope === 0 || curve.linSideSlope === 0) refuse(element.at, 'a slope of a Log is 0');
  if (camera && linSideBreak === undefined) refuse(element.at, 'a camera Log needs linSideBreak');
  const { slope, offset } = straightPart(curve);
  if (camera && !(Number.isFinite(1 / slope) && Number.isFinite(offset)))
    refuse(element.at, 'the straight part of the camera Log cannot be made');
  return curve;
}

/** A logarithm or its inverse, for all channels or each its own. */
export const log: NodeKind = (source) => {
  const { element, refuse } = source;
  const style = element.attributes.get('style') ?? '';
  if (!Object.hasOwn(styles, style))
    return refuse(element.at, `the style of a Log is one of ${Object.keys(styles).join(', ')}`);
  const given = childrenOf(element, 'LogParams');
  const curves = ['R', 'G', 'B'].map((channel) => {
    const own = given.find(({ attributes }) => attributes.get('channel') === channel);
    const parameters = own ?? given.find(({ attributes }) => !attributes.has('channel')) ?? element;
    return styles[style as StyleName](curveOf(source, parameters, style.startsWith('camera')));
  });
  return {
    run: (values, count) => {
      for (let i = 0; i < 3 * count; i++) values[i] = curves[i % 3](values[i]);
    },
    separable: true,
  };
};
