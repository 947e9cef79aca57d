import type { NodeKind, NodeSource } from '../node.js';
import { childrenOf } from '../node.js';
import type { Element } from '../xml.js';

/** A power, for the `monCurve` styles one that begins with a straight line: S-2014-006 (CLF v3.0), Exponent. */
interface Power {
  readonly exponent: number;
  readonly offset: number;
}

type Curve = (value: number) => number;

/** What becomes of values below 0: held at 0, turned about it, or let through. */
const held =
  (of: Curve): Curve =>
  (x) =>
    of(Math.max(0, x));
const mirrored =
  (of: Curve): Curve =>
  (x) =>
    x < 0 ? -of(-x) : of(x);
const passed =
  (of: Curve): Curve =>
  (x) =>
    x > 0 ? of(x) : x;

/** An exponent of 1 or an offset of 0 leaves no straight part: as near to it as readers go. */
const nearly = 1e-6;

/** The power of `monCurve`, straight up to its break, where value and slope agree. */
function moncurve({ exponent, offset }: Power) {
  const [g, o] = [Math.max(exponent, 1 + nearly), Math.max(offset, nearly)];
  const end = o / (g - 1);
  const level = ((end + o) / (1 + o)) ** g;
  const slope = level / end;
  const forward: Curve = (x) => (x >= end ? ((x + o) / (1 + o)) ** g : x * slope);
  const reverse: Curve = (y) => (y >= level ? (1 + o) * y ** (1 / g) - o : y / slope);
  return { forward, reverse };
}

const forth =
  ({ exponent }: Power): Curve =>
  (x) =>
    x ** exponent;
const back =
  ({ exponent }: Power): Curve =>
  (x) =>
    x ** (1 / exponent);

/** What each style makes of its parameters. */
const styles = {
  basicFwd: (p) => held(forth(p)),
  basicRev: (p) => held(back(p)),
  basicMirrorFwd: (p) => mirrored(forth(p)),
  basicMirrorRev: (p) => mirrored(back(p)),
  basicPassThruFwd: (p) => passed(forth(p)),
  basicPassThruRev: (p) => passed(back(p)),
  monCurveFwd: (p) => moncurve(p).forward,
  monCurveRev: (p) => moncurve(p).reverse,
  monCurveMirrorFwd: (p) => mirrored(moncurve(p).forward),
  monCurveMirrorRev: (p) => mirrored(moncurve(p).reverse),
} satisfies Record<string, (power: Power) => Curve>;

type StyleName = keyof typeof styles;

/** Ranges of the parameters. S-2014-006 (CLF v3.0), Exponent. */
const ranges = { basic: [0.01, 100], monCurve: [1, 10], offset: [0, 0.9] } as const;

function powerOf({ refuse }: NodeSource, { attributes, at }: Element, style: StyleName): Power {
  const number = (name: string, [least, most]: readonly [number, number], otherwise?: string): number => {
    const text = attributes.get(name)?.trim() ?? otherwise ?? '';
    const value = text === '' ? NaN : Number(text);
    return value >= least && value <= most
      ? value
      : refuse(at, `${name} is no number from ${least} to ${most}`);
  };
  const straight = style.startsWith('monCurve');
  return {
    exponent: number('exponent', straight ? ranges.monCurve : ranges.basic),
    offset: straight ? number('offset', ranges.offset, '0') : 0,
  };
}

/** A power or its inverse, for all channels or each its own; a channel that is not named stays as it is. */
export const exponent: NodeKind = (source) => {
  const { element, refuse } = source;
  const style = element.attributes.get('style') ?? '';
  if (!Object.hasOwn(styles, style))
    return refuse(element.at, `the style of an Exponent is one of ${Object.keys(styles).join(', ')}`);
  const given = childrenOf(element, 'ExponentParams');
  if (given.length === 0) refuse(element.at, 'an Exponent needs ExponentParams');
  const curves = ['R', 'G', 'B'].map((channel): Curve => {
    const own = given.find(({ attributes }) => attributes.get('channel') === channel);
    const parameters = own ?? given.find(({ attributes }) => !attributes.has('channel'));
    if (parameters === undefined) return (x) => x;
    return styles[style as StyleName](powerOf(source, parameters, style as StyleName));
  });
  return {
    run: (values, count) => {
      for (let i = 0; i < 3 * count; i++) values[i] = curves[i % 3](values[i]);
    },
    separable: true,
  };
};
