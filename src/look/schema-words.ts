import { z } from 'zod';

export type Schema = z.core.$ZodType;

/** The schema without defaults and the like. */
export function bare(schema: Schema): Schema {
  const inner = (schema._zod.def as { innerType?: Schema }).innerType;
  return inner === undefined ? schema : bare(inner);
}

const listOf = ({ minimum, maximum }: { minimum?: number; maximum?: number }) =>
  minimum === undefined ? 'a list of numbers' : `a list of ${minimum} to ${maximum} numbers`;

/** What a schema allows, in words. */
export function allowedBy(schema: Schema): string {
  if (schema instanceof z.ZodEnum) return schema.options.join(', ');
  if (schema instanceof z.ZodNumber) return `a number from ${schema.minValue} to ${schema.maxValue}`;
  if (schema instanceof z.ZodBoolean) return 'true or false';
  if (schema instanceof z.ZodString) return 'a text in double quotes';
  if (schema instanceof z.ZodObject) return `an object of ${Object.keys(schema.shape).join(', ')}`;
  if (schema instanceof z.ZodTuple) return `a list of ${schema.def.items.length} numbers`;
  if (schema instanceof z.ZodArray) return listOf(schema._zod.bag as { minimum?: number; maximum?: number });
  return 'something else';
}
