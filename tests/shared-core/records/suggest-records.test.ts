import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainWords } from '../../../shared-core/records/names-in-text.ts';
import { isClear, suggestTargets, type PaperTarget } from '../../../shared-core/records/suggest-records.ts';
import { amountsInText } from '../../../shared-core/records/text-amounts.ts';
import { datesInText } from '../../../shared-core/records/text-dates.ts';
import { day } from '../calendar/day.ts';

const TODAY = day('2026-11-25');

// Our own rule; every receipt is invented.
describe('dates in a text', () => {
  test.each([
    { text: 'Date 2026-05-12', is: ['2026-05-12'] },
    { text: '2026/05/12 and 2026.05.13', is: ['2026-05-12', '2026-05-13'] },
    { text: '12.05.2026', is: ['2026-05-12'] },
    { text: '25/03/2026', is: ['2026-03-25'] },
    { text: '03/25/2026', is: ['2026-03-25'] },
    { text: '03/04/2026', is: ['2026-04-03', '2026-03-04'] },
    { text: '3.4.26', is: ['2026-04-03', '2026-03-04'] },
    { text: '4/4/2026', is: ['2026-04-04'] },
    { text: '12 May 2026', is: ['2026-05-12'] },
    { text: '2nd of March? no: 2nd March 2026', is: ['2026-03-02'] },
    { text: 'Sept 5, 2026 at noon', is: ['2026-09-05'] },
    { text: 'September 5th, 2026', is: ['2026-09-05'] },
    { text: '12-OCT-2025', is: ['2025-10-12'] },
    { text: '30.02.2026, 31/11/2025', is: [] },
    { text: 'due 2027-01-01', is: [] },
    { text: 'part 1.2.3.4, tel 01/23/4567/8, 10.5.20261', is: [] },
    { text: '2026-05-12 then 12 May 2026', is: ['2026-05-12'] },
    { text: '', is: [] },
  ])('$text', ({ text, is }) => {
    expect(datesInText(text, 'day-first', TODAY).map((one) => one.date)).toEqual(is);
  });

  test('numbers that mean two days give both, the household\'s way first, and neither is sure', () => {
    expect(datesInText('03/04/2026', 'month-first', TODAY)).toEqual([{ date: '2026-03-04', sure: false, first: true }, { date: '2026-04-03', sure: false, first: false }]);
    expect(datesInText('25/03/2026', 'month-first', TODAY)).toEqual([{ date: '2026-03-25', sure: true, first: false }]);
  });
});

describe('amounts in a text', () => {
  test.each([
    { case: 'a point', text: 'Oil 24.00\nTotal 84.20', currency: 'GBP', is: [[8420, true], [2400, false]] },
    { case: 'a comma and thousands by points', text: 'Total 1.284,50', currency: 'EUR', is: [[128450, true]] },
    { case: 'thousands by commas', text: 'TOTAL: $12,284.50', currency: 'USD', is: [[1228450, true]] },
    { case: 'thousands by blanks', text: 'Sum 1 284,50', currency: 'EUR', is: [[128450, true]] },
    { case: 'a word alone on the line before', text: 'Amount due\n84.20\nThank you 1.00', currency: 'GBP', is: [[8420, true], [100, false]] },
    { case: 'a subtotal is none', text: 'Subtotal 70.17\nVAT 14.03\nTotal 84.20', currency: 'GBP', is: [[8420, true], [7017, false], [1403, false]] },
    { case: 'a currency without minor digits', text: 'Total 12,300 for 2 pieces', currency: 'JPY', is: [[12300, true]] },
    { case: 'a currency of three digits', text: 'Total 12.345', currency: 'KWD', is: [[12345, true]] },
    { case: 'a date is none', text: '12.05.2026', currency: 'EUR', is: [] },
    { case: 'a part number is none', text: 'AB-12.3456 1.2.3', currency: 'EUR', is: [] },
  ])('$case', ({ text, currency, is }) => {
    expect(amountsInText(text, currency).map((one) => [one.minor, one.total])).toEqual(is);
  });
});

const TARGET: PaperTarget = { kind: 'record', id: 'r', date: day('2026-05-12'), placeName: 'Corner Yard', sums: [8420], hasPaper: false, carName: 'Wren', registration: 'AB12 CDE' };
const tells = (text: string, taken: string | null = null) => ({ dates: datesInText(text, 'day-first', TODAY), amounts: amountsInText(text, 'GBP'), day: taken === null ? null : day(taken), words: plainWords(text) });

describe('what a paper may belong to', () => {
  test('the record with its total, day and place stands out, with the reasons', () => {
    const others = [{ ...TARGET, id: 'other', date: day('2026-05-14'), sums: [1000], placeName: null }];
    const found = suggestTargets(tells('Corner Yard\n12 May 2026\nTotal 84.20'), [...others, TARGET]);
    expect(found.map((one) => one.target.id)).toEqual(['r', 'other'].slice(0, found.length));
    expect(found[0]?.reasons.map((one) => one.key)).toEqual(['suggest-total', 'suggest-printed-day', 'suggest-place', 'suggest-no-paper']);
    expect(isClear(found)).toBe(true);
  });

  test('two that are alike are both named, and neither stands out', () => {
    const found = suggestTargets(tells('03/04/2026\nTotal 84.20'), [{ ...TARGET, id: 'a', date: day('2026-04-03') }, { ...TARGET, id: 'b', date: day('2026-03-04') }]);
    expect(found.map((one) => one.target.id)).toEqual(['a', 'b']);
    expect(isClear(found)).toBe(false);
  });

  test.each([
    { case: 'a photograph of its day', text: '', taken: '2026-05-12', named: true },
    { case: 'a photograph of three weeks later', text: '', taken: '2026-06-05', named: false },
    { case: 'the car\'s registration alone', text: 'ab12cde', taken: null, named: false },
    { case: 'its registration and the place', text: 'AB12CDE at corner yard', taken: null, named: true },
    { case: 'a place that only begins alike', text: 'corner yardstick 14 May 2026', taken: null, named: false },
    { case: 'nothing', text: '', taken: null, named: false },
  ])('$case: $named', ({ text, taken, named }) => {
    expect(suggestTargets(tells(text, taken), [TARGET])).toHaveLength(named ? 1 : 0);
  });

  test('no text breaks it, and a long one takes the time of its length', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => void suggestTargets(tells(text), [TARGET])));
    for (const piece of ['1.', '1 ', '12 ', '1.234,', 'may ', '12 may', ' ', '\n', 'total', '2026-', '9'.repeat(50)]) {
      const started = performance.now();
      suggestTargets(tells(piece.repeat(60_000 / piece.length)), [TARGET]);
      expect(performance.now() - started, JSON.stringify(piece)).toBeLessThan(2_000);
    }
  });
});
