import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/errors/input-error.js';
import { lookJsonSchema } from '../../src/look/look-schema.js';
import { checkLook } from '../../src/look/read-look.js';
import { isValid, type JsonSchema, spoilt, validValues } from './json-schema.js';

const schema = lookJsonSchema() as JsonSchema;
const seed = 71;

/** What the reader says of a value of JSON. */
function refusal(value: unknown): InputError | undefined {
  try {
    checkLook(value, 'look.json');
    return undefined;
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

/** Fields whose numbers must also fit one another, which a schema cannot say. */
const fitted = /(encoding|primaries|spectrum)/;

describe('the JSON schema of the look file', () => {
  it('is one of 2020-12 with a title', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.title).toBe('Gatelight look file');
    expect(schema.required).toEqual(['name']);
  });

  it('is the same text whenever it is asked for', () =>
    expect(JSON.stringify(lookJsonSchema())).toBe(JSON.stringify(schema)));

  it('accepts what the reader accepts, and what it alone accepts is refused for numbers that do not fit', () =>
    fc.assert(
      fc.property(validValues(schema), (value) => {
        if (!isValid(schema, value)) return false;
        const error = refusal(value);
        return error === undefined || error.problems.every(({ field }) => fitted.test(field ?? ''));
      }),
      { seed, numRuns: 1000 },
    ));

  it('refuses what the reader refuses, after one change of any kind', () => {
    let [refused, accepted] = [0, 0];
    fc.assert(
      fc.property(
        validValues(schema).chain((value) => spoilt(value)),
        (value) => {
          const error = refusal(value);
          if (isValid(schema, value)) {
            accepted++;
            return error === undefined || error.problems.every(({ field }) => fitted.test(field ?? ''));
          }
          refused++;
          return error !== undefined;
        },
      ),
      { seed, numRuns: 3000 },
    );
    // Neither answer may be the only one, or nothing was compared.
    expect(refused).toBeGreaterThan(300);
    expect(accepted).toBeGreaterThan(300);
  });
});
