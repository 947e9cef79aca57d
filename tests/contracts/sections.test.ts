import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileLook } from '../../src/look/compile-look.js';
import { fieldRows } from '../../src/look/field-table.js';
import { lookJsonSchema, lookSchema } from '../../src/look/look-schema.js';
import type { JsonSchema } from '../look/json-schema.js';
import { cameras, deliveries, lookOf, luminancesOf, sectionsOf, wedgeOf } from '../look/looks.js';

const seed = 91;
/** What the eye and a lattice of six decimals cannot tell. */
const identity = 1e-6;
/** Steps down of a neutral wedge that are roundings of encodings and of Newton's rest. */
const rising = 1e-9;

const words = new Set(['$schema', 'name', 'note']);
const names = Object.keys(lookSchema.shape).filter((name) => !words.has(name));
const schema = lookJsonSchema() as Required<JsonSchema>;

/** Values of each section that a look may ask for. */
const values: Record<string, fc.Arbitrary<unknown>> = {
  camera: cameras,
  delivery: deliveries,
  ...sectionsOf(false),
};

/** Code values in the cube (`reach` 0) or around it, the same ones every time. */
function codes(reach: number, count = 400): Float64Array {
  let state = 7;
  const next = () => (state = (state * 16807) % 2147483647) / 2147483647;
  const colours = Float64Array.from({ length: 3 * count }, () => -reach + (1 + 2 * reach) * next());
  colours.set([0, 0, 0, 1, 1, 1, 0, 0, 1, 1, 0, 0, 1 + reach, -reach, 0.5]);
  return colours;
}

interface Leaf {
  readonly path: string;
  readonly field: JsonSchema;
  readonly required: boolean;
}

/** Every field that holds a value and not fields. */
function leaves(path: string, field: JsonSchema, required: boolean): Leaf[] {
  if (field.anyOf !== undefined)
    return [{ path, field, required }, ...field.anyOf.flatMap((branch) => leaves(path, branch, true))];
  if (field.properties === undefined) return [{ path, field, required }];
  return Object.entries(field.properties).flatMap(([name, inner]) =>
    leaves(`${path}.${name}`, inner, field.required?.includes(name) ?? false),
  );
}

it('every section has values here', () => expect(Object.keys(values).sort()).toEqual([...names].sort()));

describe.each(names)('%s', (name) => {
  const fields = leaves(name, schema.properties[name], false);

  it('has fields with meaning, limits, and a default or the word that it may be left out', () => {
    expect(schema.properties[name].description).toBeTruthy();
    for (const { path, field, required } of fields) {
      expect(field.description, `${path}: meaning`).toBeTruthy();
      if (field.type === 'number') {
        expect(field.minimum, `${path}: least`).toBeTypeOf('number');
        expect(field.maximum, `${path}: most`).toBeTypeOf('number');
      }
      const optional =
        field.default === undefined && !required && field.anyOf === undefined && field.enum === undefined;
      if (optional && field.type === 'number') expect(field.description, path).toMatch(/left out/);
    }
  });

  it('names the unit of every number that has one', () => {
    const unit: Record<string, RegExp> = {
      screenLuminance: /cd\/m2/,
      kelvin: /kelvin/,
      startNm: /nm/,
      stepNm: /nm/,
      exposureStops: /stops/,
      flare: /share/,
      cyan: /share/,
      openGate: /linear level/,
    };
    for (const { path, field } of fields) {
      const expected = unit[path.split('.').at(-1) ?? ''];
      if (expected !== undefined) expect(field.description, path).toMatch(expected);
    }
  });

  it('stands in the table of fields', () =>
    expect(fieldRows().filter(({ field }) => field.startsWith(`${name}.`)).length).toBeGreaterThan(1));

  it('absent or at its defaults is the identity', () => {
    for (const fieldsOfLook of [{}, { [name]: {} }]) {
      for (const reach of [0, 0.5]) {
        const before = codes(reach);
        const after = before.slice();
        compileLook(lookOf(fieldsOfLook))(after, after.length / 3);
        after.forEach((value, i) => expect(Math.abs(value - before[i])).toBeLessThan(identity));
      }
    }
  });

  it('keeps the neutral axis rising in luminance, for every value', () => {
    let worst = 0;
    fc.assert(
      fc.property(values[name], (value) => {
        // Printed two stops down, so that no channel is cut at 1 while the others go on.
        const look = lookOf({ print: { exposureStops: -2 }, [name]: value });
        const wedge = wedgeOf(look, 300);
        compileLook(look)(wedge, wedge.length / 3);
        const luminances = luminancesOf(look, wedge);
        const down = Math.max(
          ...luminances.map((luminance, i) => (luminances[i - 1] ?? -Infinity) - luminance),
        );
        worst = Math.max(worst, down);
        return down <= rising;
      }),
      { seed },
    );
    process.stdout.write(`${name}: largest step down of a wedge's luminance ${worst.toExponential(1)}\n`);
  });

  it('gives code values 0..1 for every value, in the cube and beyond', () =>
    fc.assert(
      fc.property(values[name], (value) => {
        const around = codes(0.5, 100);
        compileLook(
          lookOf({
            [name]: value,
            print: { exposureStops: 0.01 },
            ...(name === 'print' ? { print: value } : {}),
          }),
        )(around, 100);
        return around.every((code) => code >= 0 && code <= 1);
      }),
      { seed },
    ));
});
