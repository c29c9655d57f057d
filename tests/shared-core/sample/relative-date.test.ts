import { describe, expect, test } from 'vitest';
import { relativeDate } from '../../../shared-core/sample/relative-date.ts';
import { resolveDates } from '../../../shared-core/sample/resolve-dates.ts';
import { day } from './sample-household.ts';

describe('relative dates', () => {
  // Source: the notation is ours; dates counted on a calendar by hand.
  test.each([
    { text: 'today', today: '2026-11-25', date: '2026-11-25' },
    { text: '-48m', today: '2026-11-25', date: '2022-11-25' },
    { text: '+19m-10d', today: '2026-11-25', date: '2028-06-15' },
    { text: '-16d', today: '2026-11-25', date: '2026-11-09' },
    { text: '-12m', today: '2028-02-29', date: '2027-02-28' },
    { text: '-12m+3d', today: '2028-02-29', date: '2027-03-03' },
    { text: '-1m', today: '2026-03-31', date: '2026-02-28' },
    { text: 'today -1m', today: '2026-03-31', date: '2026-02-28' },
    { text: 'last 04-09', today: '2026-11-25', date: '2026-04-09' },
    { text: 'last 12-01', today: '2026-11-25', date: '2025-12-01' },
    { text: 'last 11-25', today: '2026-11-25', date: '2025-11-25' },
    { text: 'last 04-09 -24m+2d', today: '2026-11-25', date: '2024-04-11' },
    { text: '+10d sat', today: '2026-11-25', date: '2026-12-05' },
    { text: '+11d sat', today: '2026-11-25', date: '2026-12-12' },
    { text: 'today wed', today: '2026-11-25', date: '2026-11-25' },
    { text: '-1d mon', today: '2026-11-25', date: '2026-11-30' },
  ])('$text on $today is $date', ({ text, today, date }) => {
    expect(relativeDate(text, day(today))).toBe(date);
  });

  test.each(['', ' ', ' sat', 'sat', '+1dsat', '+1d sam', '48m', '-48', '-48m -3d x', 'today!', 'last 4-9', '2026-11-25', 'the last 04-09', '-48M'])('"%s" is no relative date', (text) => {
    expect(relativeDate(text, day('2026-11-25'))).toBeNull();
  });

  test('a day that not every year has is our own fault', () => {
    expect(() => relativeDate('last 02-29', day('2026-11-25'))).toThrow('02-29');
  });
});

test('every relative date in a piece of data is turned, at any depth, and nothing else is touched', () => {
  const data = { on: '-1m', lines: [{ note: 'done -1m ago', at: 'today' }], many: ['+1d', 5, null, true], fixed: '1972-05-16' };
  expect(resolveDates(data, day('2026-11-25'))).toEqual({
    on: '2026-10-25', lines: [{ note: 'done -1m ago', at: '2026-11-25' }], many: ['2026-11-26', 5, null, true], fixed: '1972-05-16',
  });
});
