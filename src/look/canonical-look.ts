import type { Look } from './look-schema.js';

/** JSON with sorted keys and no blanks: the same value always gives the same text. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, field]) => field !== undefined);
    const fields = entries
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, field]) => `${JSON.stringify(key)}:${canonicalJson(field)}`);
    return `{${fields.join(',')}}`;
  }
  return JSON.stringify(value);
}

/**
 * The text that a look's hash is taken of: all that shapes the colours and the name, defaults filled in; the note and
 * the editor's schema are left out, so that rewording a note does not make another look.
 */
export function canonicalLook(look: Look): string {
  return canonicalJson({ ...look, $schema: undefined, note: undefined });
}
