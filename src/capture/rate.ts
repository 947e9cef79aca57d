import { InputError } from '../errors/input-error.js';

/** Rates that are written short but are fractions: 16.67 means 16 2/3, 29.97 means 30000/1001 (SMPTE ST 170). */
const fractions = [50 / 3, 24000 / 1001, 30000 / 1001, 60000 / 1001, 120000 / 1001];
const writtenShort = 0.004;

const forms = {
  decimal: /^(\d+(?:\.\d+)?)$/,
  fraction: /^(\d+(?:\.\d+)?)\s*\/\s*(\d+(?:\.\d+)?)$/,
  mixed: /^(\d+)\s+(\d+)\s*\/\s*(\d+)$/,
};

function valueOf(text: string): number {
  const mixed = forms.mixed.exec(text);
  if (mixed) return Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]);
  const fraction = forms.fraction.exec(text);
  if (fraction) return Number(fraction[1]) / Number(fraction[2]);
  return forms.decimal.test(text) ? Number(text) : NaN;
}

/**
 * A frame rate or a time as people write it: `18`, `16.67`, `16 2/3`, `50/3`, `1/54`.
 * @param field what it is for, named in the error
 * @throws InputError for anything else, and for 0
 */
export function parseRate(text: string, field: string): number {
  const value = valueOf(text.trim());
  if (!(value > 0) || !Number.isFinite(value))
    throw new InputError({
      field,
      what: `"${text.slice(0, 40)}" is not a rate or time`,
      allowed: 'a number above 0 such as 18, 16.67, 16 2/3 or 1/54',
    });
  return fractions.find((exact) => Math.abs(value - exact) < writtenShort) ?? value;
}

/** A rate in words of the trade: `16 2/3`, `23.976`, `18`. */
export function rateText(rate: number): string {
  const whole = Math.floor(rate + 1e-6);
  const thirds = Math.round((rate - whole) * 3);
  if (thirds > 0 && thirds < 3 && Math.abs(rate - whole - thirds / 3) < 1e-6) return `${whole} ${thirds}/3`;
  return String(Number(rate.toFixed(3)));
}

/** An exposure time in words of the trade: `1/54 s`, `1/56.25 s`. @param seconds at most 1 */
export function exposureText(seconds: number): string {
  return `1/${String(Number((1 / seconds).toFixed(2)))} s`;
}
