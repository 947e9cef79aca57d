import { z } from 'zod';
import { type Look, lookSchema } from '../../look/look-schema.js';
import { bare, type Schema } from '../../look/schema-words.js';

/** Sections of a look that a field may lie in. */
export const sectionNames = ['camera', 'stock', 'print', 'projector', 'room', 'rolloff', 'delivery'] as const;
export type SectionName = (typeof sectionNames)[number];

/** Path of a field in a look: `stock.loss.cyan`. */
export type FieldPath = `${SectionName}.${string}`;

/** The field of an object, or of the one of several forms that has it. */
function fieldIn(schema: Schema, name: string): Schema | undefined {
  const plain = bare(schema);
  if (plain instanceof z.ZodUnion)
    return (plain.options as readonly Schema[]).map((form) => fieldIn(form, name)).find((found) => found);
  return plain instanceof z.ZodObject ? (plain.shape as Record<string, Schema>)[name] : undefined;
}

function schemaAt(path: string): Schema {
  return path.split('.').reduce<Schema>((schema, name) => {
    const field = fieldIn(schema, name);
    if (field === undefined) throw new Error(`the look file has no field ${path}`);
    return field;
  }, lookSchema);
}

const parsedSection = (section: SectionName): unknown =>
  (lookSchema.parse({ name: 'x', [section]: {} }) as Look)[section];

export function fieldOf(look: Look, path: FieldPath): unknown {
  return valueAt(look, path.split('.'));
}

function valueAt(value: unknown, names: readonly string[]): unknown {
  return names.reduce((at, name) => (at as Record<string, unknown> | undefined)?.[name], value);
}

/** What a field is before anybody touches it; undefined where the look leaves it out. */
export function initialOf(path: FieldPath): unknown {
  const [section, ...names] = path.split('.');
  return valueAt(parsedSection(section as SectionName), names);
}

/** The value that counts: the look's own, or what stands for it. */
export const valueOf = (look: Look, path: FieldPath): unknown => fieldOf(look, path) ?? initialOf(path);

/** Least and greatest value of a number field, as the look file allows them. */
export function limitsOf(path: FieldPath): { min: number; max: number } {
  const schema = bare(schemaAt(path));
  if (!(schema instanceof z.ZodNumber)) throw new Error(`${path} is no number`);
  return { min: schema.minValue ?? -Infinity, max: schema.maxValue ?? Infinity };
}

/** What the look file's schema says of a field. */
export function meaningOf(path: FieldPath): string {
  const schema = schemaAt(path);
  return z.globalRegistry.get(bare(schema))?.description ?? z.globalRegistry.get(schema)?.description ?? '';
}

function placed(value: unknown, [name, ...rest]: readonly string[], given: unknown): unknown {
  // What holds no fields has none to leave out: a lamp that is a name, or none, has no kelvin.
  if (given === undefined && typeof value !== 'object') return value;
  const { [name]: old, ...others } = (value ?? {}) as Record<string, unknown>;
  if (rest.length > 0) return { ...others, [name]: placed(old, rest, given) };
  return given === undefined ? others : { ...others, [name]: given };
}

/** The look with one field set; undefined leaves it out. A section that was left out comes in with its defaults. */
export function withField(look: Look, path: FieldPath, given: unknown): Look {
  const [section, ...names] = path.split('.') as [SectionName, ...string[]];
  const own = look[section] ?? parsedSection(section);
  // Through the schema, so that the fields keep the order in which the look file lists them.
  return lookSchema.parse({ ...look, [section]: placed(own, names, given) });
}

/** The look with fields as they were at first. A section all of whose fields are so is left out. */
export function withoutFields(look: Look, paths: readonly FieldPath[]): Look {
  const reset = paths.reduce((next, path) => {
    const [section] = path.split('.') as [SectionName];
    return next[section] === undefined ? next : withField(next, path, initialOf(path));
  }, look);
  const idle = sectionNames.filter(
    (section) => JSON.stringify(reset[section]) === JSON.stringify(parsedSection(section)),
  );
  return lookSchema.parse(
    Object.fromEntries(Object.entries(reset).filter(([name]) => !idle.includes(name as SectionName))),
  );
}
