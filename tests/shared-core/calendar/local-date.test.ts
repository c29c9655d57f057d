import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import {
  addDays, asDate, dateOfInstant, dayNumber, dayOf, daysBetween, earliest, FIRST_DATE, fromDayNumber, LAST_DATE, later, localDate, monthOf, yearOf,
} from '../../../shared-core/calendar/local-date.ts';
import { dateSchema } from '../../../shared-core/calendar/date-schema.ts';
import { anyDate, day } from './day.ts';

const temporal = (date: string) => Temporal.PlainDate.from(date);

/** Whether Temporal takes a date as it stands, none of its days or months moved. */
function temporalTakes(text: string): boolean {
  try {
    return Temporal.PlainDate.from(text, { overflow: 'reject' }).toString() === text;
  } catch {
    return false;
  }
}

describe('a date from its text', () => {
  // Source: ISO 8601 calendar dates and the Gregorian leap rule (common knowledge, no source); limits are ours.
  test.each([
    { case: 'a leap day', text: '2024-02-29', taken: true },
    { case: 'no leap day in 1900', text: '1900-02-29', taken: false },
    { case: 'a leap day in 2000', text: '2000-02-29', taken: true },
    { case: 'no leap day in 2100', text: '2100-02-29', taken: false },
    { case: 'the first date', text: '1900-01-01', taken: true },
    { case: 'the day before the first', text: '1899-12-31', taken: false },
    { case: 'the last date', text: '2199-12-31', taken: true },
    { case: 'the day after the last', text: '2200-01-01', taken: false },
    { case: '31 April', text: '2026-04-31', taken: false },
    { case: 'month 13', text: '2026-13-01', taken: false },
    { case: 'month 0', text: '2026-00-10', taken: false },
    { case: 'day 0', text: '2026-01-00', taken: false },
    { case: 'day and month the other way round', text: '25-11-2026', taken: false },
    { case: 'no zeros', text: '2026-1-5', taken: false },
    { case: 'a time after it', text: '2026-11-25T00:00', taken: false },
    { case: 'a line end after it', text: '2026-11-25\n', taken: false },
    { case: 'a space before it', text: ' 2026-11-25', taken: false },
    { case: 'year 26', text: '0026-11-25', taken: false },
    { case: 'six digits of year', text: '+002026-11-25', taken: false },
    { case: 'digits of another script', text: '٢٠٢٦-١١-٢٥', taken: false },
    { case: 'nothing', text: '', taken: false },
  ])('$case: $text, $taken', ({ text, taken }) => {
    const date = localDate(text);
    expect(date.ok).toBe(taken);
    if (!date.ok) expect(date.refusal).toMatchObject({ code: 'not-a-date' });
    expect(dateSchema.safeParse(text).success).toBe(taken);
  });

  test('is taken exactly where Temporal takes it without moving anything', () => {
    const part = (most: number) => fc.integer({ min: 0, max: most }).map((n) => String(n).padStart(2, '0'));
    fc.assert(fc.property(fc.integer({ min: 1900, max: 2199 }), part(13), part(32), (year, month, ofMonth) => {
      const text = `${year}-${month}-${ofMonth}`;
      expect(localDate(text).ok).toBe(temporalTakes(text));
    }), { numRuns: 2000 });
  });

  test('what is refused is cut short in the refusal', () => {
    const refused = localDate('9'.repeat(5000));
    expect(!refused.ok && String(refused.refusal.values['value']).length).toBe(40);
  });
});

describe('days', () => {
  test('agree with Temporal over three centuries', () => {
    fc.assert(fc.property(anyDate(), anyDate(), fc.integer({ min: -20_000, max: 20_000 }), (one, other, days) => {
      expect(daysBetween(one, other)).toBe(temporal(one).until(other, { largestUnit: 'days' }).days);
      const moved = temporal(one).add({ days }).toString();
      expect(addDays(one, days)).toBe(moved < FIRST_DATE ? FIRST_DATE : moved > LAST_DATE ? LAST_DATE : moved);
      expect([yearOf(one), monthOf(one), dayOf(one)]).toEqual([temporal(one).year, temporal(one).month, temporal(one).day]);
      expect(asDate(yearOf(one), monthOf(one), dayOf(one))).toBe(one);
    }), { numRuns: 2000 });
  });

  test('count every day of the calendar once', () => {
    // By hand: 300 years, leap ones 300 / 4 - 1900 - 2100 = 73.
    expect(daysBetween(FIRST_DATE, LAST_DATE) + 1).toBe(300 * 365 + 73);
    const strays: number[] = [];
    for (let number = dayNumber(FIRST_DATE); number <= dayNumber(LAST_DATE); number += 1) if (dayNumber(fromDayNumber(number)) !== number) strays.push(number);
    expect(strays).toEqual([]);
  });

  test('are counted from 1970-01-01', () => {
    expect([dayNumber(day('1970-01-01')), dayNumber(day('1969-12-31')), dayNumber(day('2000-03-01'))]).toEqual([0, -1, 11_017]);
  });

  test('stop at the ends of the calendar', () => {
    expect([addDays(LAST_DATE, 1), addDays(FIRST_DATE, -1), fromDayNumber(1e9)]).toEqual([LAST_DATE, FIRST_DATE, LAST_DATE]);
    expect(() => fromDayNumber(Number.NaN)).toThrow(RangeError);
  });
});

describe('earlier and later', () => {
  test('nothing is earlier than nothing', () => {
    expect([earliest(), earliest(null), earliest(null, day('2026-01-02'), day('2026-01-01'), null)]).toEqual([null, null, '2026-01-01']);
    expect(later(day('2026-01-02'), day('2026-01-01'))).toBe('2026-01-02');
  });

  test('the date of an instant is its UTC date', () => {
    expect(dateOfInstant('2026-11-25T23:59:59.999Z')).toBe('2026-11-25');
  });
});
