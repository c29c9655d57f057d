import { describe, expect, test } from 'vitest';
import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { must } from '../../../shared-core/result/assert.ts';
import type { WindowView } from '../../../shared-core/views/due-view.ts';
import { dueWords, lateWords, minutesWords } from '../../../renderer/ui/due-words.ts';
import { householdWords } from '../../../renderer/ui/household-words.ts';

const WORDS = householdWords('en-GB', 'GBP');
const day = (text: string | null): LocalDate | null => {
  if (text === null) return null;
  const date = localDate(text);
  return must(date.ok ? date.value : null, 'date');
};

/** Rounding: FORECAST section 5 (weeks where the width is below 60 days, else months, never a bare day). Words: our own. */
describe('when an item falls due', () => {
  test.each<{ case: string; state: WindowView['state']; dates: [string | null, string | null, string | null]; limb: WindowView['limb']; says: string }>([
    { case: 'an exact date', state: 'ahead', dates: ['2026-12-26', '2026-12-26', '2026-12-26'], limb: 'time', says: 'by 26 Dec 2026' },
    { case: 'a printed date', state: 'open', dates: ['2027-06-09', '2027-06-09', '2027-06-09'], limb: 'printed-date', says: 'by 9 Jun 2027' },
    { case: 'late by time', state: 'late', dates: ['2025-11-25', '2025-11-25', '2025-11-25'], limb: 'time', says: 'was due by 25 Nov 2025' },
    { case: 'late by distance', state: 'late', dates: ['2026-10-01', '2026-10-20', '2026-11-01'], limb: 'distance', says: 'its distance is passed' },
    { case: 'late by wear', state: 'late', dates: ['2026-10-20', '2026-10-20', '2026-10-20'], limb: 'wear', says: 'worn to its limit by Oct 2026' },
    { case: '59 days wide: Mondays', state: 'open', dates: ['2026-12-02', '2026-12-20', '2027-01-30'], limb: 'distance', says: 'weeks of 30 Nov 2026 to 25 Jan 2027, likely that of 14 Dec 2026' },
    { case: '60 days wide: months', state: 'open', dates: ['2026-12-02', '2026-12-20', '2027-01-31'], limb: 'distance', says: 'Dec 2026 to Jan 2027' },
    { case: 'months with a likely one between', state: 'ahead', dates: ['2026-12-30', '2027-02-04', '2027-03-20'], limb: 'distance', says: 'Dec 2026 to Mar 2027, likely Feb 2027' },
    { case: 'within one week', state: 'open', dates: ['2026-12-01', '2026-12-02', '2026-12-03'], limb: 'distance', says: 'week of 30 Nov 2026' },
    { case: 'a date that a forecast may come before', state: 'ahead', dates: ['2027-07-05', '2027-10-01', '2027-10-01'], limb: 'time', says: 'from Jul 2027, by 1 Oct 2027 at the latest' },
    { case: 'no latest edge in sight', state: 'ahead', dates: ['2028-01-05', '2030-03-01', null], limb: 'distance', says: 'from Jan 2028, likely Mar 2030, perhaps much later' },
    { case: 'no likely date in sight', state: 'ahead', dates: ['2029-01-05', null, null], limb: 'distance', says: 'not before Jan 2029' },
    { case: 'nothing in sight', state: 'ahead', dates: [null, null, null], limb: 'distance', says: 'not within five years' },
    { case: 'not known', state: 'unknown', dates: [null, null, null], limb: null, says: 'nobody knows when it was last done' },
  ])('$case', ({ state, dates: [earliest, likely, latest], limb, says }) => {
    expect(dueWords({ state, earliest: day(earliest), likely: day(likely), latest: day(latest), limb }, WORDS)).toBe(says);
  });

  test('equal edges by distance are still a forecast, never a bare day', () => {
    const date = day('2026-12-02');
    expect(dueWords({ state: 'open', earliest: date, likely: date, latest: date, limb: 'distance' }, WORDS)).toBe('week of 30 Nov 2026');
  });
});

describe('by how much it is late', () => {
  test.each([
    { case: 'one day', late: { days: 1, months: 0, distance: null }, says: '1 day late' },
    { case: 'twelve months', late: { days: 365, months: 12, distance: null }, says: '12 months late' },
    { case: 'two years', late: { days: 731, months: 24, distance: null }, says: '2 years late' },
    { case: 'years and a month', late: { days: 770, months: 25, distance: null }, says: '2 years 1 month late' },
    { case: 'distance', late: { days: 0, months: 0, distance: { value: 584, unit: 'mi' } }, says: '584 mi past its distance' },
    { case: 'both', late: { days: 40, months: 1, distance: { value: 12000, unit: 'km' } }, says: '1 month late and 12\u202f000 km past its distance' },
    { case: 'worn', late: { days: 0, months: 0, distance: null }, says: 'past its limit' },
  ] as const)('$case', ({ late, says }) => expect(lateWords(late, WORDS)).toBe(says));
});

test.each([[45, '45 min'], [60, '1 h'], [320, '5 h 20 min']])('%i minutes', (minutes, says) => expect(minutesWords(minutes)).toBe(says));
