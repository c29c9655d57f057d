import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween } from '../../../shared-core/calendar/local-date.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { sayLateBy, sayWindow } from '../../../shared-core/views/say-window.ts';
import { anyDate, day } from '../calendar/day.ts';

const window = (earliest: string | null, likely: string | null, latest: string | null, limb: 'time' | 'distance' | 'wear' | 'printed-date' = 'distance') => {
  const date = (text: string | null) => (text === null ? null : day(text));
  return { earliest: date(earliest), likely: date(likely), latest: date(latest), limb };
};

describe('when something falls due, in words', () => {
  // Source: house method, section 5: by week under 60 days of width, else by month, never a bare day of a forecast. Mondays by hand.
  test.each([
    { case: 'an exact date', of: window('2027-03-01', '2027-03-01', '2027-03-01', 'time'), said: '1 Mar 2027' },
    { case: 'a printed date', of: window('2027-03-01', '2027-03-01', '2027-03-01', 'printed-date'), said: '1 Mar 2027' },
    { case: 'a forecast of no width is still a forecast', of: window('2027-03-03', '2027-03-03', '2027-03-03'), said: 'week of 1 Mar 2027' },
    { case: '59 days wide: its week, from a Sunday', of: window('2026-12-01', '2026-12-20', '2027-01-29'), said: 'week of 14 Dec 2026' },
    { case: 'the week of a Monday is its own', of: window('2026-12-01', '2026-12-21', '2027-01-29'), said: 'week of 21 Dec 2026' },
    { case: 'a week over the year\'s end', of: window('2026-12-20', '2027-01-02', '2027-01-20'), said: 'week of 28 Dec 2026' },
    { case: '60 days wide: its month', of: window('2026-12-01', '2026-12-20', '2027-01-30'), said: 'about December 2026' },
    { case: 'no late edge within five years', of: window('2026-12-01', '2030-05-20', null), said: 'about May 2030' },
    { case: 'only an early edge', of: window('2030-05-20', null, null), said: 'not before May 2030' },
    { case: 'nothing to be foreseen', of: window(null, null, null), said: '' },
    { case: 'a forecast cut by its time limit', of: window('2027-01-10', '2027-02-03', '2027-02-03', 'time'), said: 'week of 1 Feb 2027' },
  ])('$case: $said', ({ of, said }) => {
    expect(sayWindow(of)).toBe(said);
  });

  test('a narrow forecast names a Monday, at most six days before its likely date', () => {
    fc.assert(fc.property(anyDate(day('1950-01-01'), day('2150-01-01')), fc.integer({ min: 0, max: 29 }), fc.integer({ min: 0, max: 29 }), (likely, before, after) => {
      const said = sayWindow({ earliest: addDays(likely, -before), likely, latest: addDays(likely, after), limb: 'distance' });
      const named = [0, 1, 2, 3, 4, 5, 6].map((days) => addDays(likely, -days)).find((date) => said === `week of ${sayDate(date)}`);
      expect(named).toBeDefined();
      // 2024-01-01 was a Monday.
      if (named !== undefined) expect(Math.abs(daysBetween(day('2024-01-01'), named) % 7)).toBe(0);
    }));
  });
});

describe('by how much something is late, in words', () => {
  const miles = (value: number) => ({ value, unit: 'mi' as const });
  test.each([
    { late: { days: 365, months: 12, distance: null }, said: '12 months late' },
    { late: { days: 31, months: 1, distance: null }, said: '1 month late' },
    { late: { days: 30, months: 0, distance: null }, said: '30 days late' },
    { late: { days: 1, months: 0, distance: null }, said: '1 day late' },
    { late: { days: 0, months: 0, distance: miles(1200) }, said: '1200 mi past' },
    { late: { days: 40, months: 1, distance: miles(12_000) }, said: '1 month late, 12\u202f000 mi past' },
    { late: { days: 0, months: 0, distance: null }, said: 'past its limit' },
  ])('$said', ({ late, said }) => {
    expect(sayLateBy(late)).toBe(said);
  });
});
