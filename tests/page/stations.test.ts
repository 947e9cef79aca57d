import { describe, expect, it } from 'vitest';
import { buildLook } from '../../src/jobs/build-look.js';
import { canonicalLook } from '../../src/look/canonical-look.js';
import { type Look, lookSchema } from '../../src/look/look-schema.js';
import { readyLooks } from '../../src/page/ready-looks.js';
import { limitsOf, valueOf, withField, withoutFields } from '../../src/page/state/field.js';
import { plainLook } from '../../src/page/state/sheet.js';
import { stationList } from '../../src/page/stations/index.js';
import { type Control, fieldsOf } from '../../src/page/stations/station.js';

const maker = { version: '0', sha256: () => '' };
const tableOf = (look: Look) => buildLook(look, { size: 4, plain: true }, maker).lut.values;

/** Far less than an eye or an 8-bit code can tell, far more than rounding. */
const noChange = 1e-6;

/** Values over all that a control offers. */
function offered(control: Control, look: Look): readonly unknown[] {
  const { path } = control;
  if (control.kind === 'toggle') return [valueOf(look, path) !== true];
  if (control.kind === 'choice')
    return control.options
      .filter(({ value, holds }) => value !== undefined || holds?.(undefined) === true)
      .map(({ value }) => value);
  const { scale = 1, usual } = control;
  const { min, max } = limitsOf(path);
  const [from, to] = usual === undefined ? [min, max] : usual.map((end) => end / scale);
  return [0.2, 0.45, 0.7, 0.95].map((share) => from + share * (to - from));
}

function changes(control: Control, look: Look): boolean {
  const before = tableOf(look);
  return offered(control, look).some((value) =>
    tableOf(withField(look, control.path, value)).some((code, i) => Math.abs(code - before[i]) > noChange),
  );
}

const controlsOf = (look: Look) =>
  stationList
    .flatMap(({ groups }) => groups.flatMap(({ controls }) => controls))
    .filter((control) => control.when?.(look) !== false);

/** A look that asks for something everywhere, the eye left to itself. */
const busyLook = lookSchema.parse({
  name: 'Busy',
  stock: { loss: { yellow: 0.3 } },
  projector: { lamp: { kelvin: 2900 }, flare: 0.004 },
  room: { surround: 'dark' },
  rolloff: { shoulderSoftness: 0.4 },
  delivery: { encoding: 'srgb', primaries: 'bt709', range: 'full' },
});

describe('every control', () => {
  it.each([busyLook, ...readyLooks])('changes the table of “$name”, or says why it does not', (look) => {
    const wrong = controlsOf(look)
      .filter((control) => changes(control, look) === ((control.idle?.(look) ?? '') !== ''))
      .map(({ path }) => path);
    expect(wrong).toEqual([]);
  });

  it('that says so changes nothing in a new look', () => {
    const idle = controlsOf(plainLook()).filter((control) => (control.idle?.(plainLook()) ?? '') !== '');
    expect(idle.length).toBeGreaterThan(3);
    expect(idle.filter((control) => changes(control, plainLook()))).toEqual([]);
  });
});

describe('reset', () => {
  it.each([busyLook, ...readyLooks])(
    'of every station makes “$name” a look that asks for nothing',
    (look) => {
      const reset = stationList.reduce((next, station) => withoutFields(next, fieldsOf(station)), look);
      expect(canonicalLook(reset)).toBe(canonicalLook(plainLook(look.name)));
    },
  );
});
