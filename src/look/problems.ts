import type { Problem } from '../errors/input-error.js';
import { nearestName } from '../errors/nearest-name.js';
import { z } from 'zod';
import { allowedBy, bare, type Schema } from './schema-words.js';

type Issue = z.core.$ZodIssue;

/** The schemas a value may follow: the branches of a union, or the one. */
const branches = (schema: Schema): readonly Schema[] => {
  const plain = bare(schema);
  return plain instanceof z.ZodUnion ? (plain.options as readonly Schema[]).flatMap(branches) : [plain];
};

/** The schemas that stand at a path below one. */
function schemasAt(schema: Schema, path: readonly PropertyKey[]): readonly Schema[] {
  if (path.length === 0) return branches(schema);
  return branches(schema).flatMap((branch) => {
    if (branch instanceof z.ZodObject) {
      const next = branch.shape[String(path[0])] as Schema | undefined;
      return next === undefined ? [] : schemasAt(next, path.slice(1));
    }
    if (branch instanceof z.ZodTuple)
      return schemasAt(branch.def.items[Number(path[0])] ?? branch, path.slice(1));
    return branch instanceof z.ZodArray ? schemasAt(branch.element, path.slice(1)) : [];
  });
}

/** A text in double quotes, short enough for a line, nothing in it that a terminal would obey. */
export const quoted = (text: string) => JSON.stringify(text.length > 56 ? `${text.slice(0, 53)}...` : text);

/** What was given, short enough for a line. */
function shown(value: unknown): string {
  if (typeof value === 'string') return quoted(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  return typeof value === 'object' && value !== null ? 'an object' : String(value);
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((at, key) => (at as Record<PropertyKey, unknown> | undefined)?.[key], value);
}

/** A field's own name, in quotes where it is none of ours. */
const keyName = (key: PropertyKey) => (/^[$\w]{1,60}$/.test(String(key)) ? String(key) : quoted(String(key)));

const fieldName = (path: readonly PropertyKey[]) =>
  path.length === 0
    ? undefined
    : path.reduce<string>(
        (text, key) =>
          typeof key === 'number' ? `${text}[${key}]` : text ? `${text}.${keyName(key)}` : keyName(key),
        '',
      );

function unknownKeys(
  issue: Issue & { keys: string[] },
  schema: Schema,
  path: readonly PropertyKey[],
): Problem[] {
  const known = schemasAt(schema, path).flatMap((at) =>
    at instanceof z.ZodObject ? Object.keys(at.shape) : [],
  );
  const allowed = known.filter((name) => name !== '$schema').join(', ');
  return issue.keys.map((key) => {
    const field = fieldName([...path, key]);
    if (known.includes(key))
      return { field, what: 'does not go with the field beside it', allowed: `one of ${allowed}` };
    const meant = nearestName(key, known);
    return {
      field,
      what: `there is no field ${quoted(key)}`,
      allowed,
      ...(meant === undefined ? {} : { hint: `Did you mean ${quoted(meant)}?` }),
    };
  });
}

function wrongValue(value: unknown, schema: Schema, path: readonly PropertyKey[]): Problem {
  const at = schemasAt(schema, path);
  const names = at.flatMap((branch) => (branch instanceof z.ZodEnum ? (branch.options as string[]) : []));
  const given = valueAt(value, path);
  const meant = typeof given === 'string' ? nearestName(given, names) : undefined;
  return {
    field: fieldName(path),
    what: given === undefined ? 'is missing' : `${shown(given)} is not allowed`,
    allowed: at.map(allowedBy).join('; or '),
    ...(meant === undefined ? {} : { hint: `Did you mean ${quoted(meant)}?` }),
  };
}

/** The branch of a union that was meant: the one whose complaints lie deepest, when any is below the union itself. */
function meantBranch(issue: Issue & { errors: Issue[][] }): Issue[] | undefined {
  const fits = (list: Issue[]) =>
    list.every((one) => one.path.length > 0 || one.code === 'unrecognized_keys' || one.code === 'custom');
  const list = issue.errors.filter(fits);
  return list.sort((a, b) => missing(a) - missing(b))[0];
}

/** Complaints about a field that is not there at all: a branch with none of these is likelier the one meant. */
const missing = (list: Issue[]) =>
  list.filter(
    (one) => one.code === 'unrecognized_keys' || (one.code === 'invalid_type' && one.input === undefined),
  ).length;

/** All that a schema finds wrong, field by field: what was given, what is allowed, the nearest right name. */
export function problemsOf(
  issues: readonly Issue[],
  value: unknown,
  schema: Schema,
  above: readonly PropertyKey[] = [],
): Problem[] {
  return issues.flatMap((issue): Problem[] => {
    const path = [...above, ...issue.path];
    if (issue.code === 'unrecognized_keys') return unknownKeys(issue, schema, path);
    if (issue.code === 'custom') {
      const { allowed } = (issue.params ?? {}) as Pick<Problem, 'allowed'>;
      return [{ field: fieldName(path), what: issue.message, ...(allowed === undefined ? {} : { allowed }) }];
    }
    const branch = issue.code === 'invalid_union' ? meantBranch(issue) : undefined;
    return branch === undefined ? [wrongValue(value, schema, path)] : problemsOf(branch, value, schema, path);
  });
}
