import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { weekdayOf } from '../../../shared-core/calendar/weekday.ts';
import { anyDate, day } from './day.ts';

describe('the day of the week', () => {
  test.each([
    { date: '1970-01-01', weekday: 4, source: 'the epoch was a Thursday (from memory; common knowledge)' },
    { date: '2000-01-01', weekday: 6, source: 'a Saturday (from memory)' },
    { date: '1900-01-01', weekday: 1, source: 'a Monday (from memory)' },
    { date: '2026-11-25', weekday: 3, source: 'recomputed with the runtime' },
    { date: '2026-11-29', weekday: 7, source: 'recomputed with the runtime' },
  ])('$date is $weekday ($source)', ({ date, weekday }) => {
    expect(weekdayOf(day(date))).toBe(weekday);
  });

  test('is the runtime\'s on every date, Sunday being 7', () => {
    fc.assert(fc.property(anyDate(), (date) => {
      expect(weekdayOf(date) % 7).toBe(new Date(`${date}T00:00:00Z`).getUTCDay());
    }));
  });
});
