import type { NodeKind, NodeSource } from '../node.js';
import { childrenOf, numbersOf } from '../node.js';

/** Slope, offset and power of each channel, then saturation: S-2014-006 (CLF v3.0), ASC_CDL. */
interface Decision {
  readonly slope: Float64Array;
  readonly offset: Float64Array;
  readonly power: Float64Array;
  readonly saturation: number;
}

/** Luma weights of the saturation: ITU-R BT.709, as the standard has them. */
const luma = [0.2126, 0.7152, 0.0722];

const held = (value: number): number => Math.min(1, Math.max(0, value));
const free = (value: number): number => value;
/** A power of what is above 0; the rest stays as it is. */
const raised = (value: number, power: number): number => (value > 0 ? value ** power : value);

type Turn = (rgb: Float64Array, decision: Decision, end: (value: number) => number) => void;

function saturate(rgb: Float64Array, saturation: number): void {
  const grey = luma[0] * rgb[0] + luma[1] * rgb[1] + luma[2] * rgb[2];
  for (let c = 0; c < 3; c++) rgb[c] = grey + saturation * (rgb[c] - grey);
}

const forward: Turn = (rgb, { slope, offset, power, saturation }, end) => {
  for (let c = 0; c < 3; c++) rgb[c] = raised(end(rgb[c] * slope[c] + offset[c]), power[c]);
  saturate(rgb, saturation);
  for (let c = 0; c < 3; c++) rgb[c] = end(rgb[c]);
};

const reverse: Turn = (rgb, { slope, offset, power, saturation }, end) => {
  for (let c = 0; c < 3; c++) rgb[c] = end(rgb[c]);
  saturate(rgb, 1 / saturation);
  for (let c = 0; c < 3; c++) rgb[c] = end((raised(end(rgb[c]), 1 / power[c]) - offset[c]) / slope[c]);
};

const styles = {
  Fwd: [forward, held],
  FwdNoClamp: [forward, free],
  Rev: [reverse, held],
  RevNoClamp: [reverse, free],
} as const;

function decisionOf(source: NodeSource, undone: boolean): Decision {
  const { element, refuse } = source;
  const numbers = (group: string, name: string, count: number, otherwise: number): Float64Array => {
    const [of] = childrenOf(element, group);
    const [found] = of === undefined ? [] : childrenOf(of, name);
    return found === undefined ? new Float64Array(count).fill(otherwise) : numbersOf(source, found, count);
  };
  const decision = {
    slope: numbers('SOPNode', 'Slope', 3, 1),
    offset: numbers('SOPNode', 'Offset', 3, 0),
    power: numbers('SOPNode', 'Power', 3, 1),
    saturation: numbers('SatNode', 'Saturation', 1, 1)[0],
  };
  const factors = [...decision.slope, decision.saturation];
  if (factors.some((factor) => factor < 0) || decision.power.some((power) => power <= 0))
    refuse(element.at, 'slope and saturation of an ASC_CDL are 0 or more, its power is above 0');
  if (undone && factors.includes(0))
    refuse(element.at, 'an ASC_CDL with a slope or saturation of 0 has no inverse');
  return decision;
}

/** Slope, offset, power and saturation of the American Society of Cinematographers' colour decision list, or their inverse. */
export const ascCdl: NodeKind = (source) => {
  const { element, refuse } = source;
  const style = element.attributes.get('style') ?? 'Fwd';
  if (!Object.hasOwn(styles, style))
    return refuse(element.at, `the style of an ASC_CDL is one of ${Object.keys(styles).join(', ')}`);
  const [turn, end] = styles[style as keyof typeof styles];
  const decision = decisionOf(source, turn === reverse);
  return {
    run: (values, count) => {
      for (let i = 0; i < count; i++) turn(values.subarray(3 * i, 3 * i + 3), decision, end);
    },
    separable: decision.saturation === 1,
  };
};
