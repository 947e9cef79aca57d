import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, canonicalLook } from '../../src/look/canonical-look.js';
import { lookJsonSchema } from '../../src/look/look-schema.js';
import { checkLook } from '../../src/look/read-look.js';
import { type JsonSchema, validValues } from './json-schema.js';

const seed = 73;

/** The same value with the fields of every object the other way round. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, field]) => [key, reversed(field)]),
  );
}

const values = fc.jsonValue({ maxDepth: 3 });

describe('canonical JSON', () => {
  it('is the same for the same value, whatever the order of its fields', () =>
    fc.assert(
      fc.property(values, (value) => canonicalJson(reversed(value)) === canonicalJson(value)),
      { seed },
    ));

  it('is JSON of the same value', () =>
    fc.assert(
      fc.property(values, (value) => {
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed },
    ));

  it('has no blanks, sorts by code unit and leaves out what is undefined', () =>
    expect(canonicalJson({ b: [1, { z: null, a: 'x y' }], B: undefined, a: -0, é: true })).toBe(
      '{"a":0,"b":[1,{"a":"x y","z":null}],"é":true}',
    ));
});

const sections = Object.fromEntries(
  Object.entries((lookJsonSchema() as JsonSchema).properties ?? {}).filter(
    ([name]) => !['$schema', 'note', 'camera', 'delivery', 'projector'].includes(name),
  ),
);
const looks = validValues({ type: 'object', properties: sections, required: ['name'] }) as fc.Arbitrary<
  Record<string, unknown>
>;
const textOf = (value: unknown) => canonicalLook(checkLook(value, 'look.json'));

describe('the canonical text of a look', () => {
  it("does not depend on the order of fields, the note or the editor's schema", () =>
    fc.assert(
      fc.property(looks, fc.string(), fc.string(), (look, note, $schema) => {
        const text = textOf(look);
        return textOf(reversed(look)) === text && textOf({ $schema, note, ...look }) === text;
      }),
      { seed },
    ));

  it('reads back as the same look', () =>
    fc.assert(
      fc.property(looks, (look) => {
        const text = textOf(look);
        return textOf(JSON.parse(text)) === text;
      }),
      { seed },
    ));

  it('has the defaults filled in, so that spelling one out changes nothing', () => {
    const spelled = {
      name: 'a',
      camera: { encoding: 'srgb', primaries: 'bt709', range: 'full' },
      print: { contrast: 1 },
    };
    expect(textOf(spelled)).toBe(textOf({ name: 'a', print: {} }));
  });

  it.each([
    [{ name: 'a' }, { name: 'b' }],
    [{ name: 'a' }, { name: 'a', stock: {} }],
    [
      { name: 'a', print: { contrast: 1 } },
      { name: 'a', print: { contrast: 1.0000001 } },
    ],
    [
      { name: 'a', camera: { range: 'full' } },
      { name: 'a', camera: { range: 'legal' } },
    ],
  ])('tells %j from %j', (one, other) => expect(textOf(one)).not.toBe(textOf(other)));
});
