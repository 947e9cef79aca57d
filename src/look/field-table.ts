import { z } from 'zod';
import { lookSchema } from './look-schema.js';
import { allowedBy, bare, type Schema } from './schema-words.js';

/** One field of the look file, for a table that people read. */
export interface FieldRow {
  readonly field: string;
  readonly meaning: string;
  readonly allowed: string;
  /** As JSON; undefined where the field may be left out without a value taking its place. */
  readonly initial: string | undefined;
}

function initialOf(schema: Schema): string | undefined {
  const { defaultValue } = schema._zod.def as { defaultValue?: unknown };
  return defaultValue === undefined || typeof defaultValue === 'object'
    ? undefined
    : JSON.stringify(defaultValue);
}

/** Names in full, objects by the names of their fields. */
function allowedIn(schema: Schema): string {
  const plain = bare(schema);
  return plain instanceof z.ZodUnion
    ? (plain.options as readonly Schema[]).map(allowedIn).join('; or ')
    : allowedBy(plain).replace(/^an object of (.*)$/, '{ $1 }');
}

function rowsOf(schema: Schema, path: string): FieldRow[] {
  const plain = bare(schema);
  if (plain instanceof z.ZodObject)
    return Object.entries(plain.shape as Record<string, Schema>).flatMap(([name, field]) =>
      rowsOf(field, path === '' ? name : `${path}.${name}`),
    );
  const meaning = z.globalRegistry.get(plain)?.description ?? z.globalRegistry.get(schema)?.description ?? '';
  return [{ field: path, meaning, allowed: allowedIn(schema), initial: initialOf(schema) }];
}

/** Every field of the look file, in the order of the light path. */
export const fieldRows = (): FieldRow[] => rowsOf(lookSchema, '').filter(({ field }) => field !== '$schema');
