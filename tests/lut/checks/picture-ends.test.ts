import { describe, expect, it } from 'vitest';
import { highlights } from '../../../src/lut/checks/highlights.js';
import { shadows } from '../../../src/lut/checks/shadows.js';
import { contextOf, curvesOf, identity, latticeOf, named } from './contexts.js';

/** One of the 4096 steps that are looked at, at either side, in percent. */
const oneStep = 200 / 4096;

const expectNear = (figure: number, share: number) =>
  expect(Math.abs(figure - 100 * share)).toBeLessThan(oneStep);

describe('highlights', () => {
  it.each([8, 10])('that change nothing leave half a code in the last code of %i bits', (bits) => {
    const finding = named(highlights.ask(contextOf(identity)), `highlights-${bits}-bit`);
    expectNear(finding.figure, 0.5 / (2 ** bits - 1));
    expect(finding.sentence).toMatch(/^Highlights stay open: .* limit .* %\.$/);
  });

  it.each([8, 10])('cut off at 90 % lose what lies above, at %i bits', (bits) => {
    const context = contextOf(curvesOf((code) => Math.min(1, code / 0.9)));
    const finding = named(highlights.ask(context), `highlights-${bits}-bit`);
    expectNear(finding.figure, 1 - 0.9 * (1 - 0.5 / (2 ** bits - 1)));
    expect(finding).toMatchObject({ pass: false, severity: 'fault', unit: '%' });
    expect(finding.sentence).toMatch(
      /^Highlights burn out: at .* bit the last output code takes .* of the greys/,
    );
  });

  it.each([8, 10])('with a shoulder that ends level stay open at %i bits', (bits) => {
    const context = contextOf(curvesOf((code) => 1 - (1 - code) ** 2));
    const finding = named(highlights.ask(context), `highlights-${bits}-bit`);
    expectNear(finding.figure, Math.sqrt(0.5 / (2 ** bits - 1)));
    expect(finding.pass).toBe(true);
  });

  it('are named by the channel that is cut off', () => {
    const context = contextOf(
      latticeOf((code, channel) => (channel === 2 ? Math.min(1, 1.25 * code) : code)),
    );
    const finding = named(highlights.ask(context), 'highlights-10-bit');
    expect(finding.sentence).toContain('(blue)');
    expect(finding.pass).toBe(false);
  });

  it('are not judged by codes that hold no picture', () => {
    const clipped = latticeOf((code) => Math.min(0.6, code), 129);
    expect(named(highlights.ask(contextOf(clipped)), 'highlights-8-bit').pass).toBe(false);
    expect(named(highlights.ask(contextOf(clipped, 'acescct')), 'highlights-8-bit').pass).toBe(true);
  });

  it('are judged up to the open gate where it is named: no film is brighter', () => {
    const cutAt = (light: number) => ({
      ...contextOf(curvesOf((code) => Math.min(1, code / light))),
      openGate: 0.9,
    });
    const above = named(highlights.ask(cutAt(0.95)), 'highlights-10-bit');
    // 0.9 / 0.95 lies in a code of its own: the last one reached takes a code's way, or less
    expect(above.figure).toBeLessThan((100 * 0.95) / 0.9 / 1023 + oneStep);
    expect(above.pass).toBe(true);
    expect(above.sentence).toContain('of the greys up to the open gate');
    const below = named(highlights.ask(cutAt(0.8)), 'highlights-10-bit');
    expectNear(below.figure, 1 - (0.8 / 0.9) * (1 - 0.5 / 1023));
    expect(below.pass).toBe(false);
  });

  it.each([1, 1.2])('are judged to the end where the open gate lies there: %d', (openGate) => {
    const context = contextOf(curvesOf((code) => Math.min(1, code / 0.9)));
    expect(highlights.ask({ ...context, openGate }).map(({ figure }) => figure)).toEqual(
      highlights.ask(context).map(({ figure }) => figure),
    );
  });

  it('of pure colours are judged along their own ramp, as a note', () => {
    const context = contextOf(curvesOf((code, channel) => (channel === 1 ? Math.min(1, code / 0.8) : code)));
    const finding = named(highlights.ask(context), 'highlights-pure-colours');
    expectNear(finding.figure, 1 - 0.8 * (1 - 0.5 / 1023));
    expect(finding).toMatchObject({ pass: false, severity: 'note' });
    expect(finding.sentence).toContain('pure green');
  });
});

describe('shadows', () => {
  it.each([8, 10])('cut off at 10 %% lose what lies below, at %i bits', (bits) => {
    const context = contextOf(curvesOf((code) => Math.max(0, (code - 0.1) / 0.9)));
    const finding = named(shadows.ask(context), `shadows-${bits}-bit`);
    expectNear(finding.figure, 0.1 + (0.9 * 0.5) / (2 ** bits - 1));
    expect(finding).toMatchObject({ pass: false, severity: 'fault' });
    expect(finding.sentence).toMatch(/^Shadows block up: /);
  });

  it('of which one channel reaches black are drawn by the others, which is noted', () => {
    const context = contextOf(
      curvesOf((code, channel) => (channel === 0 ? Math.max(0, (code - 0.2) / 0.8) : code)),
    );
    const findings = shadows.ask(context);
    expectNear(named(findings, 'shadows-10-bit').figure, 0.5 / 1023);
    expectNear(named(findings, 'shadows-one-channel').figure, 0.2 + (0.8 * 0.5) / 1023);
    expect(named(findings, 'shadows-10-bit').pass).toBe(true);
    expect(named(findings, 'shadows-one-channel')).toMatchObject({ pass: false, severity: 'note' });
  });

  it('pile up in the darkest code that is reached, lifted or not', () => {
    // 0.2 is code 204.6 of 1023, shown as 205, which all inputs up to 205.5 become.
    const context = contextOf(curvesOf((code) => Math.max(0.2, code)));
    expectNear(named(shadows.ask(context), 'shadows-10-bit').figure, 205.5 / 1023);
  });
});
