import { z } from 'zod';

export type Schema = z.core.$ZodType;

/** The schema without defaults and the like. */
export function bare(schema: Schema): Schema {
  const inner = (schema._zod.def as { innerType?: Schema }).innerType;
  return inner === undefined ? schema : bare(inner);
}

/** The least and the greatest length that a list or a text may have, in words; empty when there is none. */
function lengths(schema: Schema): string {
  const checks = (schema._zod.def.checks ?? []).map(({ _zod }) => _zod.def as { check: string });
  const limit = (check: string, key: string) =>
    (checks.find((one) => one.check === check) as Record<string, unknown> | undefined)?.[key];
  const [least, most] = [limit('min_length', 'minimum'), limit('max_length', 'maximum')];
  if (least === undefined && most === undefined) return '';
  return most === undefined
    ? `at least ${least} `
    : least === undefined
      ? `up to ${most} `
      : `${least} to ${most} `;
}

function textIn(schema: Schema): string {
  const length = lengths(schema);
  return length === '' ? 'a text in double quotes' : `a text of ${length}characters in double quotes`;
}

/** What a schema allows, in words. */
export function allowedBy(schema: Schema): string {
  if (schema instanceof z.ZodEnum) return schema.options.join(', ');
  if (schema instanceof z.ZodNumber) return `a number from ${schema.minValue} to ${schema.maxValue}`;
  if (schema instanceof z.ZodBoolean) return 'true or false';
  if (schema instanceof z.ZodString) return textIn(schema);
  if (schema instanceof z.ZodObject) {
    const names = Object.keys(schema.shape).filter((name) => name !== '$schema');
    return `an object of ${names.join(', ')}`;
  }
  if (schema instanceof z.ZodTuple) return `a list of ${schema.def.items.length} numbers`;
  if (schema instanceof z.ZodArray) return `a list of ${lengths(schema)}numbers`;
  return 'something else';
}
