import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DATE_ORDERS, isCertain, meantDates, type DateOrder } from '../../../shared-core/calendar/date-text.ts';
import { fromDayNumber, localDate } from '../../../shared-core/calendar/local-date.ts';
import { day } from './day.ts';

const TODAY = day('2026-11-25');
const every = (date: string) => ({ ymd: date, dmy: date, mdy: date });
const ISO = 'ISO 8601 calendar date, from memory';
const OURS = 'common practice, no source';

describe('a date as people write it', () => {
  test.each([
    { text: '2024-02-29', means: every('2024-02-29'), source: ISO },
    { text: '20240229', means: every('2024-02-29'), source: ISO },
    { text: '2024-02-29T23:59:01.5Z', means: every('2024-02-29'), source: `${ISO}; the day as written` },
    { text: '2024-02-29 07:05', means: every('2024-02-29'), source: OURS },
    { text: '29/02/2024, 7:05 pm', means: { dmy: '2024-02-29' }, source: OURS },
    { text: '2023-02-29', means: {}, source: '2023 is no leap year' },
    { text: '2024/2/9', means: every('2024-02-09'), source: OURS },
    { text: '2024.02.09', means: every('2024-02-09'), source: OURS },
    { text: '2024-13-02', means: {}, source: 'year, day, month is no order in use' },
    { text: '25/03/2024', means: { dmy: '2024-03-25' }, source: 'no 25th month' },
    { text: '03/25/2024', means: { mdy: '2024-03-25' }, source: 'no 25th month' },
    { text: '3.4.2024', means: { dmy: '2024-04-03', mdy: '2024-03-04' }, source: 'both are months' },
    { text: '3. 4. 2024', means: { dmy: '2024-04-03', mdy: '2024-03-04' }, source: OURS },
    { text: '3 4 2024', means: { dmy: '2024-04-03', mdy: '2024-03-04' }, source: OURS },
    { text: '03-04-05', means: { ymd: '2003-04-05', dmy: '2005-04-03', mdy: '2005-03-04' }, source: 'two digits may be the year at either end' },
    { text: '31/01/26', means: { dmy: '2026-01-31', ymd: '1931-01-26' }, source: 'the last year with these digits that has begun: 31 is 1931 in 2026' },
    { text: '1/2/27', means: { dmy: '1927-02-01', mdy: '1927-01-02' }, source: '2027 has not begun; one digit is no year' },
    { text: '25 Mar 2024', means: every('2024-03-25'), source: OURS },
    { text: '25-Mar-24', means: every('2024-03-25'), source: OURS },
    { text: '25mar2024', means: every('2024-03-25'), source: OURS },
    { text: '3rd September, 2024', means: every('2024-09-03'), source: OURS },
    { text: '3 Sept. 2024', means: every('2024-09-03'), source: OURS },
    { text: 'March 25, 2024', means: every('2024-03-25'), source: OURS },
    { text: '2024 March 25', means: every('2024-03-25'), source: OURS },
    { text: 'Mon, 25 Mar 2024', means: every('2024-03-25'), source: OURS },
    { text: '31 Feb 2024', means: {}, source: 'no such day' },
    { text: '25 Ma 2024', means: {}, source: 'March or May: two letters are no month' },
    { text: '25 Mark 2024', means: {}, source: 'no English month' },
    { text: '1899-12-31', means: {}, source: 'before the first date taken' },
    { text: '124-03-04', means: {}, source: 'three digits are no year' },
    { text: '25/03-2024', means: {}, source: 'two marks' },
    { text: '45376', means: {}, source: 'a number of days is no date' },
    { text: '', means: {}, source: 'nothing' },
    { text: `2024-01-01${' '.repeat(60)}x`, means: {}, source: 'too long' },
  ])('$text', ({ text, means }) => {
    expect(meantDates(text, TODAY)).toEqual(means);
  });

  test('is certain where it means the same in every order', () => {
    expect(['2024-03-25', '25 Mar 24', 'none', '03/03/03'].map((text) => isCertain(meantDates(text, TODAY)))).toEqual([true, true, true, true]);
    expect(['25/03/2024', '03/03/2024', '3/4/2024'].map((text) => isCertain(meantDates(text, TODAY)))).toEqual([false, false, false]);
  });
});

describe('any date', () => {
  const dates = fc.integer({ min: -25_567, max: 84_000 }).map(fromDayNumber);
  const written = (date: string, order: DateOrder, mark: string) => {
    const [year = '', month = '', number = ''] = date.split('-');
    return { ymd: [year, month, number], dmy: [number, month, year], mdy: [month, number, year] }[order].join(mark);
  };

  test('written in an order is read in it', () => {
    fc.assert(fc.property(dates, fc.constantFrom(...DATE_ORDERS), fc.constantFrom('-', '/', '.', ' '), (date, order, mark) => {
      expect(meantDates(written(date, order, mark), TODAY)[order]).toBe(date);
    }));
  });

  test('of any text is a date that exists', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[0-9/. -]{1,12}$/)), (text) => {
      for (const date of Object.values(meantDates(text, TODAY))) expect(localDate(date)).toEqual({ ok: true, value: date });
    }));
  });
});
