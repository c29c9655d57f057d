import { describe, expect, test } from 'vitest';
import { householdWords } from '../../../renderer/ui/household-words.ts';

/** Digits by ISO 4217 List One (seen, see shared-core/units/money.ts); grouping and signs are the runtime's (CLDR). */
describe('an amount', () => {
  test.each([
    ['en-GB', 'GBP', 123_456, '£1,234.56'],
    ['en-GB', 'GBP', -5, '-£0.05'],
    ['en-US', 'JPY', 500, '¥500'],
    ['en-GB', 'KWD', 1250, 'KWD\u00a01.250'],
    ['en-GB', 'GBP', 999_999_999_999_999, '£9,999,999,999,999.99'],
  ])('in %s, %s, %i', (locale, currency, minor, says) => expect(householdWords(locale, currency).money(minor)).toBe(says));
});

describe('an amount beside a line of a chart', () => {
  test.each([
    ['en-GB', 'GBP', 2_500_000, '£25,000'],
    ['en-GB', 'GBP', 250, '£2.50'],
    ['en-US', 'JPY', 25_000, '¥25,000'],
    ['en-US', 'JPY', 1_000_000, '¥1,000,000'],
    ['en-GB', 'KWD', 25_000_000, 'KWD\u00a025,000'],
    ['de-DE', 'EUR', 100_000, '1.000\u00a0€'],
  ])('in %s, %s, %i', (locale, currency, minor, says) => expect(householdWords(locale, currency).roundMoney(minor)).toBe(says));
});

describe('a date', () => {
  const words = householdWords('en-GB', 'GBP');
  test('has three letters for every month', () => {
    const months = Array.from({ length: 12 }, (_, at) => words.monthName(`2026-${String(at + 1).padStart(2, '0')}-15`));
    expect(months).toEqual(['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']);
  });
  test('of this year goes without its year', () => expect([words.nearDate('2026-09-12', '2026-11-25'), words.nearDate('2025-09-12', '2026-11-25')]).toEqual(['12 Sep', '12 Sep 2025']));
  test('is written in the order of the locale', () => expect(householdWords('en-US', 'USD').date('2026-11-05')).toBe('Nov 5, 2026'));
});
