import { z } from 'zod';
import { assert, must } from '../result/assert.ts';
import { refusedBy } from '../result/refused-by.ts';
import currencies from './currencies.json' with { type: 'json' };

/** A map, not the object itself: on an object 'constructor' would be a currency. */
const DIGITS: ReadonlyMap<string, number> = new Map(Object.entries(currencies.digits));

/** The largest amount taken, in minor units: far above any car, far below where whole numbers stop being exact. */
export const LARGEST_MINOR = 1_000_000_000_000;

/** An amount in whole minor units of the household's currency; may be negative (a refund). */
export const minorSchema = z.int(refusedBy('not-an-amount')).min(-LARGEST_MINOR, refusedBy('not-an-amount')).max(LARGEST_MINOR, refusedBy('not-an-amount'));

/** An amount in whole minor units that is not negative (a price). */
export const priceSchema = minorSchema.min(0, refusedBy('not-an-amount'));

/** A currency of ISO 4217 List One that has minor units. */
export const currencySchema = z.string().refine((code) => minorDigits(code) !== null, refusedBy('unknown-currency'));

/**
 * Decimal digits of a currency's minor unit, or null where the currency is not known or has none.
 *
 * Source: ISO 4217 List One published 2024-06-25 (seen, as shipped in an npm package); the runtime's own table differs for some.
 * @example minorDigits('JPY') //=> 0
 */
export function minorDigits(code: string): number | null {
  return DIGITS.get(code) ?? null;
}

/**
 * An amount as text with the currency's own digits, without a symbol. Parts of a minor unit, and a currency that is not in
 * the table, are our own bug.
 *
 * @example amountText(1099, 'GBP') //=> '10.99'
 */
export function amountText(minor: number, currency: string): string {
  assert(Number.isSafeInteger(minor), `an amount of ${minor} is not whole minor units`);
  const digits = must(minorDigits(currency), `minor unit of ${currency}`);
  const text = String(Math.abs(minor)).padStart(digits + 1, '0');
  const whole = text.slice(0, text.length - digits);
  return (minor < 0 ? '-' : '') + (digits === 0 ? whole : `${whole}.${text.slice(-digits)}`);
}

/**
 * Minor units of an amount as typed ("12.5", "12,50"), exact: no floating point; null where it is not an amount of this currency.
 *
 * @example minorFromText('12.5', 'GBP') //=> 1250
 * @example minorFromText('1.234', 'GBP') //=> null
 */
export function minorFromText(text: string, currency: string): number | null {
  const digits = minorDigits(currency);
  const parts = /^(-?)(\d{1,13})(?:[.,](\d*))?$/.exec(text.trim());
  if (digits === null || parts === null) return null;
  const fraction = parts[3] ?? '';
  if (fraction.length > digits) return null;
  const minor = Number((parts[2] ?? '') + fraction.padEnd(digits, '0'));
  if (minor > LARGEST_MINOR) return null;
  return parts[1] === '-' && minor !== 0 ? -minor : minor;
}
