import type { NodeKind, NodeSource, Step } from '../node.js';
import { childrenOf, numbersOf } from '../node.js';

const names = ['minInValue', 'maxInValue', 'minOutValue', 'maxOutValue'] as const;

/** The four values as far as they are given, normalised. */
function valuesOf(source: NodeSource): (number | undefined)[] {
  const { element, refuse, inScale, outScale } = source;
  return names.map((name, i) => {
    const found = childrenOf(element, name);
    if (found.length > 1) refuse(element.at, `Range has ${name} twice`);
    return found.length === 0 ? undefined : numbersOf(source, found[0], 1)[0] / (i < 2 ? inScale : outScale);
  });
}

/** A change of scale that holds values within its ends, if it is to; or, with one end given, only that end. */
export const range: NodeKind = (source) => {
  const { element, refuse } = source;
  const style = element.attributes.get('style') ?? 'Clamp';
  if (style !== 'Clamp' && style !== 'noClamp')
    refuse(element.at, 'the style of a Range is Clamp or noClamp');
  const [minIn, maxIn, minOut, maxOut] = valuesOf(source);
  if ((minIn === undefined) !== (minOut === undefined) || (maxIn === undefined) !== (maxOut === undefined))
    refuse(element.at, 'a Range gives both values of an end, or neither');
  if (minIn !== undefined && maxIn !== undefined && !(minIn < maxIn && minOut! <= maxOut!))
    refuse(element.at, 'the values of a Range must rise');
  if (minIn === undefined && maxIn === undefined) refuse(element.at, 'a Range has no values');
  if (style === 'noClamp' && (minIn === undefined || maxIn === undefined))
    refuse(element.at, 'a Range that does not clamp needs all four values');
  return stepOf(minIn, maxIn, minOut, maxOut, style === 'Clamp');
};

function stepOf(minIn = NaN, maxIn = NaN, minOut = NaN, maxOut = NaN, clamp: boolean): Step {
  const both = !Number.isNaN(minIn + maxIn);
  const scale = both ? (maxOut - minOut) / (maxIn - minIn) : 1;
  const offset = Number.isNaN(minIn) ? maxOut - maxIn : minOut - scale * minIn;
  const least = clamp && !Number.isNaN(minOut) ? minOut : -Infinity;
  const most = clamp && !Number.isNaN(maxOut) ? maxOut : Infinity;
  return {
    run: (values, count) => {
      for (let i = 0; i < 3 * count; i++)
        values[i] = Math.min(most, Math.max(least, scale * values[i] + offset));
    },
    separable: true,
    // A table holds its own ends: a clamp to 0..1 in front of it changes nothing.
    ...(least <= 0 && most >= 1
      ? { affine: { scale: [scale, scale, scale], offset: [offset, offset, offset] } }
      : {}),
  };
}
