import { describe, expect, it } from 'vitest';
import { customPrimaries } from '../../../src/colour/primaries/custom-primaries.js';
import { primaries } from '../../../src/colour/primaries/index.js';
import { InputError } from '../../../src/errors/input-error.js';

const { red, green, blue, white } = primaries.bt709;

describe('custom primaries', () => {
  it('take any triangle around a white', () => {
    const set = customPrimaries({ red, green, blue, white }, { title: 'a camera', source: 'its data sheet' });
    expect(set).toEqual({ title: 'a camera', source: 'its data sheet', red, green, blue, white });
  });

  it.each([
    ['red', { red: [NaN, 0.3], green, blue, white }],
    ['white', { red, green, blue, white: [0.3127] }],
    ['red', { red: green, green, blue, white }],
    ['red', { red: [0.25, 0.4], green: [0.3, 0.6], blue: [0.2, 0.2], white }],
    ['red', { red: blue, green, blue: red, white }],
    ['white', { red, green, blue, white: [0.7, 0.3] }],
    ['white', { red, green, blue, white: red }],
  ] as const)('name %s in the refusal', (field, given) => {
    let error: unknown;
    try {
      customPrimaries(given as unknown as Parameters<typeof customPrimaries>[0]);
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).problems[0].field).toBe(field);
  });
});
