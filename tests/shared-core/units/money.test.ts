import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import currencies from '../../../shared-core/units/currencies.json' with { type: 'json' };
import { amountText, currencySchema, LARGEST_MINOR, minorDigits, minorFromText, minorSchema, priceSchema } from '../../../shared-core/units/money.ts';

const codes = Object.keys(currencies.digits);
const withDigits = (digits: number) => codes.filter((code) => minorDigits(code) === digits).sort();

describe('minor units', () => {
  // Source: ISO 4217 List One published 2024-06-25 (seen, as shipped in an npm package).
  test.each([
    { digits: 0, count: 17, codes: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF' },
    { digits: 3, count: 7, codes: 'BHD IQD JOD KWD LYD OMR TND' },
    { digits: 4, count: 2, codes: 'CLF UYW' },
  ])('$digits digits: $count currencies', ({ digits, count, codes: expected }) => {
    expect(withDigits(digits)).toEqual(expected.split(' '));
    expect(withDigits(digits)).toHaveLength(count);
  });

  test('all others have 2', () => {
    expect(withDigits(2)).toHaveLength(codes.length - 26);
    expect(['GBP', 'EUR', 'USD', 'CHF', 'CAD', 'AUD', 'SEK', 'PLN', 'HUF', 'MRU', 'MGA'].map(minorDigits)).toEqual(Array(11).fill(2));
  });

  // Source: the same list (13 codes are "N.A."); the others are no codes at all.
  test.each(['XAU', 'XAG', 'XDR', 'XTS', 'XXX', 'gbp', 'GB', 'GBPP', '', 'constructor', 'toString', '__proto__', 'hasOwnProperty'])('%s is no currency with minor units', (code) => {
    expect(minorDigits(code)).toBe(null);
    expect(currencySchema.safeParse(code).success).toBe(false);
  });

  // Source: the same list against the runtime (computed; the runtime's 16 differences, seen on Node 20 and on the pinned one).
  test('are not asked of the runtime, which differs for 16 of them', () => {
    const runtime = (currency: string) => new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits;
    const differ = 'AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SOS SYP YER'.split(' ');
    expect(differ.map(minorDigits)).toEqual(differ.map((code) => (code === 'IQD' ? 3 : 2)));
    expect(differ.map(runtime)).toEqual(differ.map(() => 0));
  });
});

describe('an amount as text', () => {
  // Source: ISO 4217 digits as above; by hand.
  test.each([
    { minor: 1099, currency: 'GBP', text: '10.99' },
    { minor: 1000, currency: 'JPY', text: '1000' },
    { minor: 1234, currency: 'KWD', text: '1.234' },
    { minor: 5, currency: 'EUR', text: '0.05' },
    { minor: -5, currency: 'EUR', text: '-0.05' },
    { minor: 0, currency: 'CLF', text: '0.0000' },
    { minor: -123_456, currency: 'UYW', text: '-12.3456' },
    { minor: LARGEST_MINOR, currency: 'GBP', text: '10000000000.00' },
  ])('$minor $currency is $text', ({ minor, currency, text }) => {
    expect(amountText(minor, currency)).toBe(text);
    expect(minorFromText(text, currency)).toBe(minor);
  });

  test('parts of a minor unit and unknown currencies are our own bug', () => {
    for (const minor of [10.99, 0.1 + 0.2, Number.NaN, Infinity]) expect(() => amountText(minor, 'GBP')).toThrow(/not whole minor units/);
    expect(() => amountText(1, 'XAU')).toThrow(/minor unit of XAU/);
  });
});

describe('an amount as typed', () => {
  test.each([
    { text: '12.5', currency: 'GBP', minor: 1250 },
    { text: '12,50', currency: 'EUR', minor: 1250 },
    { text: ' 12 ', currency: 'GBP', minor: 1200 },
    { text: '12.', currency: 'GBP', minor: 1200 },
    { text: '-0.00', currency: 'GBP', minor: 0 },
    { text: '0.1', currency: 'KWD', minor: 100 },
    { text: '1.234', currency: 'GBP', minor: null },
    { text: '0.5', currency: 'JPY', minor: null },
    { text: '1,234.50', currency: 'GBP', minor: null },
    { text: '1e3', currency: 'GBP', minor: null },
    { text: '+5', currency: 'GBP', minor: null },
    { text: '.5', currency: 'GBP', minor: null },
    { text: '£5', currency: 'GBP', minor: null },
    { text: '٥', currency: 'GBP', minor: null },
    { text: '', currency: 'GBP', minor: null },
    { text: '10000000000.01', currency: 'GBP', minor: null },
    { text: '9999999999999.9999', currency: 'CLF', minor: null },
    { text: '12', currency: 'XAU', minor: null },
  ])('$text in $currency: $minor', ({ text, currency, minor }) => {
    expect(minorFromText(text, currency)).toBe(minor);
  });

  test('goes out and comes back unchanged, in every currency', () => {
    fc.assert(fc.property(fc.integer({ min: -LARGEST_MINOR, max: LARGEST_MINOR }), fc.constantFrom(...codes), (minor, currency) => {
      expect(minorFromText(amountText(minor, currency), currency)).toBe(minor);
      expect(minorFromText(amountText(minor, currency).replace('.', ','), currency)).toBe(minor);
    }), { numRuns: 1000 });
  });

  test('is exact where floating point is not', () => {
    // By hand: 0.29 * 100 is 28.999999999999996 in floating point, 1.005 * 1000 is 1004.9999999999999.
    expect([minorFromText('0.29', 'GBP'), minorFromText('1.005', 'KWD')]).toEqual([29, 1005]);
  });
});

describe('amounts from outside', () => {
  test.each([
    { value: 10.99, minor: false, price: false },
    { value: '1099', minor: false, price: false },
    { value: -1, minor: true, price: false },
    { value: 0, minor: true, price: true },
    { value: LARGEST_MINOR, minor: true, price: true },
    { value: LARGEST_MINOR + 1, minor: false, price: false },
    { value: Number.NaN, minor: false, price: false },
  ])('$value', ({ value, minor, price }) => {
    expect([minorSchema.safeParse(value).success, priceSchema.safeParse(value).success]).toEqual([minor, price]);
  });
});
