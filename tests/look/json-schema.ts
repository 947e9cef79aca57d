import fc from 'fast-check';

/** As much of JSON Schema 2020-12 as the look file's schema uses; anything else is an error of the test. */
export interface JsonSchema {
  readonly type?: string;
  readonly enum?: readonly string[];
  readonly anyOf?: readonly JsonSchema[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
  readonly prefixItems?: readonly JsonSchema[];
  readonly items?: JsonSchema | false;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly title?: string;
  readonly description?: string;
  readonly default?: unknown;
  readonly $schema?: string;
}

const known = new Set(
  'type enum anyOf properties required additionalProperties prefixItems items minimum maximum minLength maxLength minItems maxItems title description default $schema'.split(
    ' ',
  ),
);

const typeOf = (value: unknown) => (Array.isArray(value) ? 'array' : value === null ? 'null' : typeof value);
const within = (value: number, least = -Infinity, most = Infinity) => value >= least && value <= most;

function isObjectOf(schema: JsonSchema, value: Readonly<Record<string, unknown>>): boolean {
  const { properties = {}, required = [], additionalProperties = true } = schema;
  return (
    required.every((name) => Object.hasOwn(value, name)) &&
    Object.entries(value).every(([name, field]) =>
      Object.hasOwn(properties, name) ? isValid(properties[name], field) : additionalProperties,
    )
  );
}

function isArrayOf(
  { prefixItems = [], items, minItems, maxItems }: JsonSchema,
  value: readonly unknown[],
): boolean {
  const rest = value.slice(prefixItems.length);
  return (
    within(value.length, minItems, maxItems) &&
    prefixItems.every((schema, i) => i >= value.length || isValid(schema, value[i])) &&
    (items === undefined ||
      (items === false ? rest.length === 0 : rest.every((item) => isValid(items, item))))
  );
}

/** Whether a value of JSON follows a schema, by the words of the standard. */
export function isValid(schema: JsonSchema, value: unknown): boolean {
  const unknown = Object.keys(schema).filter((key) => !known.has(key));
  if (unknown.length > 0) throw new Error(`this test does not know ${unknown.join(', ')}`);
  if (schema.type !== undefined && typeOf(value) !== schema.type) return false;
  if (schema.anyOf !== undefined && !schema.anyOf.some((branch) => isValid(branch, value))) return false;
  if (schema.enum !== undefined && !schema.enum.includes(value as string)) return false;
  if (typeof value === 'number') return within(value, schema.minimum, schema.maximum);
  if (typeof value === 'string') return within(value.length, schema.minLength, schema.maxLength);
  if (Array.isArray(value)) return isArrayOf(schema, value);
  return typeof value === 'object' && value !== null
    ? isObjectOf(schema, value as Record<string, unknown>)
    : true;
}

/** Values that follow a schema. */
export function validValues(schema: JsonSchema): fc.Arbitrary<unknown> {
  if (schema.anyOf !== undefined) return fc.oneof(...schema.anyOf.map(validValues));
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  switch (schema.type) {
    case 'number': {
      const [min, max] = [schema.minimum ?? -1e9, schema.maximum ?? 1e9];
      return fc.oneof(
        { weight: 6, arbitrary: fc.double({ min, max, noNaN: true }) },
        fc.constantFrom(min, max),
      );
    }
    case 'boolean':
      return fc.boolean();
    case 'string':
      return fc.string({ minLength: schema.minLength ?? 0, maxLength: Math.min(schema.maxLength ?? 12, 12) });
    case 'array':
      return schema.prefixItems === undefined
        ? fc.array(validValues(schema.items as JsonSchema), {
            minLength: schema.minItems,
            maxLength: (schema.minItems ?? 0) + 5,
          })
        : fc.tuple(...schema.prefixItems.map(validValues));
    case 'object':
      return fc.record(
        Object.fromEntries(
          Object.entries(schema.properties ?? {}).map(([name, field]) => [name, validValues(field)]),
        ),
        { requiredKeys: [...(schema.required ?? [])] },
      );
    default:
      throw new Error(`this test does not know type ${schema.type}`);
  }
}

/** One change somewhere in a value that likely makes it wrong: another kind, a stray field, a missing one, a limit passed. */
export function spoilt(value: unknown): fc.Arbitrary<unknown> {
  const here = fc.constantFrom<unknown>(null, 3, -1e7, 1e7, 'nonsense', '', [], {}, true, [1, 2, 3]);
  if (Array.isArray(value))
    return value.length === 0
      ? here
      : fc.oneof(
          here,
          fc
            .nat(value.length - 1)
            .chain((i) =>
              spoilt(value[i]).map((bad) => value.map((item, k) => (k === i ? bad : item)) as unknown),
            ),
          fc.constant([...value, 0]),
          fc.constant(value.slice(1)),
        );
  if (typeof value !== 'object' || value === null) return here;
  const entries = Object.entries(value);
  const stray = fc.constantFrom('stray', 'Name', 'kelvn', '__proto__', 'toString', '$ref').map((name) => ({
    ...value,
    [name]: 1,
  }));
  if (entries.length === 0) return fc.oneof(here, stray);
  const index = fc.nat(entries.length - 1);
  return fc.oneof(
    { weight: 1, arbitrary: here },
    { weight: 1, arbitrary: stray },
    { weight: 1, arbitrary: index.map((i) => Object.fromEntries(entries.filter((_, k) => k !== i))) },
    {
      weight: 5,
      arbitrary: index.chain((i) => spoilt(entries[i][1]).map((bad) => ({ ...value, [entries[i][0]]: bad }))),
    },
  );
}
