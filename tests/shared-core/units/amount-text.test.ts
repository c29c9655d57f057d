import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { minorOf, writtenAmount } from '../../../shared-core/units/amount-text.ts';
import { amountText } from '../../../shared-core/units/money.ts';

const minor = (text: string, currency: string, mark: '.' | ',' | null = null) => {
  const written = writtenAmount(text, currency);
  return written.ok ? minorOf(written.value, currency, mark) : written;
};

describe('an amount as people write it', () => {
  test.each([
    { text: '12.50', currency: 'GBP', is: 1250, source: 'by hand' },
    { text: '12,5', currency: 'EUR', is: 1250, source: 'by hand' },
    { text: '£12.50', currency: 'GBP', is: 1250, source: 'a sign before' },
    { text: '12,50 €', currency: 'EUR', is: 1250, source: 'a sign behind' },
    { text: 'GBP 1,041.50', currency: 'GBP', is: 104_150, source: 'a code before' },
    { text: '1.041,50 eur', currency: 'EUR', is: 104_150, source: 'a code behind' },
    { text: '1 041,50 kr', currency: 'SEK', is: 104_150, source: 'a sign of four currencies, one of them the household\'s' },
    { text: "1'041.50", currency: 'CHF', is: 104_150, source: 'Swiss practice, from memory' },
    { text: '12.-', currency: 'CHF', is: 1200, source: 'Swiss practice, from memory' },
    { text: '$12', currency: 'CAD', is: 1200, source: 'a sign of many currencies' },
    { text: '-12.50', currency: 'GBP', is: -1250, source: 'a minus before' },
    { text: '-£12.50', currency: 'GBP', is: -1250, source: 'a minus before the sign' },
    { text: '£-12.50', currency: 'GBP', is: -1250, source: 'a minus behind the sign' },
    { text: '12.50-', currency: 'GBP', is: -1250, source: 'a minus behind' },
    { text: '(12.50)', currency: 'GBP', is: -1250, source: 'brackets mean below nothing: bookkeeping practice' },
    { text: '1,041', currency: 'GBP', is: null, source: 'thousands, or worked out to a third digit: open' },
    { text: '12,500', currency: 'GBP', mark: ',' as const, is: 1250, source: 'a 0 beyond the pennies says nothing' },
    { text: '1,041', currency: 'GBP', mark: '.' as const, is: 104_100, source: 'the table parts thousands by commas' },
    { text: '1,041', currency: 'KWD', is: null, source: 'a currency of three digits: open' },
    { text: '1,000', currency: 'JPY', is: 1000, source: 'a currency without parts' },
    { text: '900.00', currency: 'JPY', is: 900, source: 'empty parts' },
    { text: '0', currency: 'GBP', is: 0, source: 'free' },
  ])('$text in $currency', ({ text, currency, is, mark }) => {
    expect(minor(text, currency, mark ?? null)).toEqual({ ok: true, value: is });
  });

  test.each([
    { text: '12 EUR', currency: 'GBP', code: 'import-currency' },
    { text: '€12', currency: 'GBP', code: 'import-currency' },
    { text: 'kr 12', currency: 'GBP', code: 'import-currency' },
    { text: '12 apples', currency: 'GBP', code: 'import-amount' },
    { text: '12 constr', currency: 'GBP', code: 'import-amount' },
    { text: '(12', currency: 'GBP', code: 'import-amount' },
    { text: '-12-', currency: 'GBP', code: 'import-amount' },
    { text: '(-12)', currency: 'GBP', code: 'import-amount' },
    { text: '12.345', currency: 'GBP', code: 'import-amount' },
    { text: '12.3456', currency: 'GBP', code: 'import-amount' },
    { text: 'free', currency: 'GBP', code: 'import-amount' },
    { text: '9'.repeat(14), currency: 'GBP', code: 'import-amount' },
    { text: '1'.repeat(61), currency: 'GBP', code: 'import-amount' },
  ])('$text in $currency: $code', ({ text, currency, code }) => {
    expect(minor(text, currency, '.')).toMatchObject({ ok: false, refusal: { code } });
  });

  test('as the program writes it is read again', () => {
    fc.assert(fc.property(fc.integer({ min: -100_000_000, max: 100_000_000 }), fc.constantFrom('GBP', 'JPY', 'KWD'), fc.constantFrom('', 'before', 'behind'), (value, currency, code) => {
      const text = amountText(value, currency);
      expect(minor(code === 'before' ? `${currency} ${text}` : code === 'behind' ? `${text} ${currency}` : text, currency, '.')).toEqual({ ok: true, value: value + 0 });
    }));
  });
});
