import { describe, expect, test } from 'vitest';
import { FieldsRead } from '../../../renderer/ui/form/read-fields.ts';

/** Source for all: worked by hand from the stated rule. */
describe('what was typed into a field of', () => {
  test.each([
    ['38250', 38250], ['38 250', 38250], ["38'250", 38250], ['38\u202f250', 38250], ['1 234 567', 1234567], ['12,5', 12.5], ['12.5', 12.5], [' 7 ', 7],
  ])('a number: %j', (text, value) => {
    const read = new FieldsRead();
    expect([read.number('value', text), read.whole(true).ok]).toEqual([value, true]);
  });

  test.each(['', 'abc', '12 34', '1,2,3', '0x10', '1e5', '--3', '3 mi'])('a number is not: %j', (text) => {
    const read = new FieldsRead();
    read.number('reading.value', text);
    expect(read.whole(null)).toMatchObject({ ok: false, refusal: { code: 'not-a-number', path: ['reading', 'value'] } });
  });

  test.each([['', null], ['12', 12]])('a whole number: %j', (text, value) => expect(new FieldsRead().wholeOrNull('months', text)).toBe(value));

  test.each(['1.5', '-1', 'x'])('a whole number is not: %j', (text) => {
    const read = new FieldsRead();
    read.wholeOrNull('months', text);
    expect(read.whole(null)).toMatchObject({ refusal: { code: 'not-whole', path: ['months'] } });
  });

  test.each([['12.5', 'GBP', 1250], ['1 234,50', 'EUR', 123450], ['500', 'JPY', 500], ['-3', 'GBP', -300]])('money: %j %s', (text, currency, minor) => {
    expect(new FieldsRead().money('amount', text, currency)).toBe(minor);
  });

  test.each([['12.345', 'GBP', '1250.00'], ['12.5', 'JPY', '1250'], ['£3', 'GBP', '1250.00'], ['', 'GBP', '1250.00']])('money is not: %j %s', (text, currency, example) => {
    const read = new FieldsRead();
    read.money('costs.0.amountMinor', text, currency);
    expect(read.whole(null)).toMatchObject({ refusal: { code: 'not-an-amount', values: { currency, example }, path: ['costs', '0', 'amountMinor'] } });
  });
});

test('the first fault is the one that is told', () => {
  const read = new FieldsRead();
  read.number('a', 'x');
  read.date('b', '2026-02-30');
  expect(read.whole(null)).toMatchObject({ refusal: { path: ['a'] } });
});
