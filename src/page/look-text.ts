import { type Look, lookSchema } from '../look/look-schema.js';

/** A look as its file: the same JSON that the command line reads, fields in the order of the light path. */
export function lookText(look: Look): string {
  const fields = Object.keys(lookSchema.shape) as (keyof Look)[];
  const ordered = Object.fromEntries(
    fields.filter((name) => look[name] !== undefined).map((name) => [name, look[name]]),
  );
  return `${JSON.stringify(ordered, null, 2)}\n`;
}
