import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { addMonths, monthsBetween } from '../../../shared-core/calendar/add-months.ts';
import { addDays, FIRST_DATE, LAST_DATE, localDate } from '../../../shared-core/calendar/local-date.ts';
import { anyDate, day } from './day.ts';
import vectors from './months.json' with { type: 'json' };

const anyMonths = fc.integer({ min: -3700, max: 3700 });
/** What Temporal says, held to the calendar's own ends as ours is. */
const inside = (date: string) => (date < FIRST_DATE ? FIRST_DATE : date > LAST_DATE ? LAST_DATE : date);
const temporal = (date: string) => Temporal.PlainDate.from(date);

describe('adding months', () => {
  test.each(vectors.add)('$from + $months = $to ($status: $source)', ({ from, months, to }) => {
    expect(addMonths(day(from), months)).toBe(to);
  });

  // Source: a second date library, temporal-polyfill (the default overflow, "constrain").
  test('agrees with Temporal on any date of three centuries', () => {
    fc.assert(fc.property(anyDate(), anyMonths, (date, months) => {
      expect(addMonths(date, months)).toBe(inside(temporal(date).add({ months }).toString()));
    }), { numRuns: 2000 });
  });

  test('agrees with Temporal on every last day of a month, one to fourteen months on and back', () => {
    for (let first = day('1999-02-01'); first < '2005-01-01'; first = addMonths(first, 1)) {
      const last = addDays(first, -1);
      for (let months = -14; months <= 14; months += 1) expect(addMonths(last, months)).toBe(temporal(last).add({ months }).toString());
    }
  });

  test('always gives a date of the calendar', () => {
    fc.assert(fc.property(anyDate(), anyMonths, (date, months) => {
      const moved = addMonths(date, months);
      expect(localDate(moved)).toEqual({ ok: true, value: moved });
    }));
  });

  test('stops at the ends of the calendar', () => {
    expect(addMonths(day('2199-12-01'), 1)).toBe('2199-12-31');
    expect(addMonths(day('1900-01-31'), -1)).toBe('1900-01-01');
  });
});

describe('months between', () => {
  test.each(vectors.between)('$from to $to: $months ($source)', ({ from, to, months }) => {
    expect(monthsBetween(day(from), day(to))).toBe(months);
  });

  test('agrees with Temporal on any two dates, either way round', () => {
    fc.assert(fc.property(anyDate(), anyDate(), (from, to) => {
      expect(monthsBetween(from, to)).toBe(temporal(from).until(to, { largestUnit: 'months' }).months);
    }), { numRuns: 2000 });
  });

  test('agrees with Temporal on every pair of days around two Februaries', () => {
    for (let from = day('2023-12-25'); from < '2024-04-05'; from = addDays(from, 1)) {
      for (let to = day('2024-02-20'); to < '2025-03-05'; to = addDays(to, 9)) {
        expect(`${from} ${to} ${monthsBetween(from, to)}`).toBe(`${from} ${to} ${temporal(from).until(to, { largestUnit: 'months' }).months}`);
      }
    }
  });

  test('never says more months than adding them would bear out', () => {
    fc.assert(fc.property(anyDate(day('1905-01-01'), day('2100-01-01')), fc.integer({ min: 0, max: 3000 }), (from, days) => {
      const to = addDays(from, days);
      expect(addMonths(from, monthsBetween(from, to)) <= to).toBe(true);
    }));
  });
});
