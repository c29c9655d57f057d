import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween, yearOf } from '../../../shared-core/calendar/local-date.ts';
import { readTyreDateCode, tyreAge, type TyreDateCode } from '../../../shared-core/fleet/tyre-date-code.ts';
import { anyDate, day } from '../calendar/day.ts';

const TODAY = day('2026-11-25');

function codeOf(text: string, today = TODAY): TyreDateCode {
  const code = readTyreDateCode(text, today);
  if (!code.ok) throw new Error(`refused ${text}: ${code.refusal.code}`);
  return code.value;
}

describe('a code of four digits', () => {
  // Source: 49 CFR 574.5 (from memory; 3197 and 0198 are its own examples), the rest computed as first Sunday + 7 (week - 1).
  test.each([
    { code: '3197', from: '1997-08-03', to: '1997-08-09', source: '49 CFR 574.5 example (from memory, re-derived)' },
    { code: '0198', from: '1998-01-04', to: '1998-01-10', source: '49 CFR 574.5 example (from memory, re-derived)' },
    { code: '0301', from: '2001-01-21', to: '2001-01-27', source: 'a vehicle maker\'s handbook: 3rd week of 2001 (seen); days computed' },
    { code: '0109', from: '2009-01-04', to: '2009-01-10', source: 'computed; ISO would say 2009-W02' },
    { code: '5107', from: '2007-12-23', to: '2007-12-29', source: 'computed' },
    { code: '2612', from: '2012-06-24', to: '2012-06-30', source: 'computed' },
    { code: '1219', from: '2019-03-24', to: '2019-03-30', source: 'computed' },
    { code: '5223', from: '2023-12-24', to: '2023-12-30', source: 'computed' },
    { code: '5323', from: '2023-12-31', to: '2024-01-06', source: 'computed: 2023 has 53 Sundays, and its last week reaches into 2024' },
    { code: '0124', from: '2024-01-07', to: '2024-01-13', source: 'computed' },
    { code: '5317', from: '2017-12-31', to: '2018-01-06', source: 'computed: 2017 has 53 Sundays' },
    { code: ' 4726 ', from: '2026-11-22', to: '2026-11-28', source: 'computed: the week in which today is' },
  ])('$code: $from to $to ($source)', ({ code, from, to }) => {
    expect(codeOf(code)).toMatchObject({ state: 'week', week: { from, to } });
  });

  test.each([
    { case: 'week 0', code: '0024', refused: 'tyre-week-impossible' },
    { case: 'week 54', code: '5424', refused: 'tyre-week-impossible' },
    { case: 'week 53 of a year with 52 Sundays', code: '5322', refused: 'tyre-week-impossible' },
    { case: 'next week', code: '4826', refused: 'tyre-week-ahead' },
    { case: 'a year to come', code: '0127', refused: 'tyre-week-ahead' },
    { case: 'a year for which four digits were not in use', code: '0189', refused: 'tyre-week-ahead' },
    { case: 'two digits', code: '12', refused: 'not-a-tyre-code' },
    { case: 'five digits', code: '12345', refused: 'not-a-tyre-code' },
    { case: 'letters', code: '12AB', refused: 'not-a-tyre-code' },
    { case: 'nothing', code: '', refused: 'not-a-tyre-code' },
    { case: 'digits of another script', code: '٢٦١٢', refused: 'not-a-tyre-code' },
  ])('$case is refused: $refused', ({ code, refused }) => {
    expect(readTyreDateCode(code, TODAY)).toMatchObject({ ok: false, refusal: { code: refused } });
  });

  test('every week is seven days from a Sunday, begins in its year, and the weeks of a year leave no gap', () => {
    // An oracle that shares nothing: the runtime's own day of the week.
    for (let year = 1990; year <= 2025; year += 1) {
      const weeks = Array.from({ length: 54 }, (_, at) => readTyreDateCode(`${String(at + 1).padStart(2, '0')}${String(year % 100).padStart(2, '0')}`, TODAY)).flatMap((code) => (code.ok && code.value.state === 'week' ? [code.value.week] : []));
      const sundays = Array.from({ length: 366 }, (_, at) => new Date(Date.UTC(year, 0, 1 + at))).filter((date) => date.getUTCFullYear() === year && date.getUTCDay() === 0);
      expect(weeks.map((week) => week.from)).toEqual(sundays.map((date) => date.toISOString().slice(0, 10)));
      expect(weeks.every((week) => daysBetween(week.from, week.to) === 6)).toBe(true);
    }
  });
});

describe('a code of three digits', () => {
  // Source: a vehicle maker's handbook: "031" may be 1981 or 1991 (seen); days computed; 2000 before July is our reading.
  test.each([
    { code: '031', years: [1981, 1991] },
    { code: '030', years: [1980, 1990, 2000] },
    { code: '300', years: [1980, 1990] },
    { code: '534', years: [1984] },
  ])('$code leaves open the decade: $years', ({ code, years }) => {
    const found = codeOf(code);
    expect(found.state === 'decade-unknown' ? found.weeks.map((week) => week.year) : null).toEqual(years);
  });

  test.each(['000', '540', '531'])('%s names a week that no such year has', (code) => {
    expect(readTyreDateCode(code, TODAY)).toMatchObject({ ok: false, refusal: { code: 'tyre-week-impossible' } });
  });
});

describe('the age of a tyre', () => {
  test.each([
    { case: 'made in one month of the calendar', code: '2612', on: '2022-06-30', age: { leastMonths: 120, mostMonths: 120 } },
    { case: 'its week across a birthday', code: '2612', on: '2022-06-26', age: { leastMonths: 119, mostMonths: 120 } },
    { case: 'made this week', code: '4726', on: '2026-11-25', age: { leastMonths: 0, mostMonths: 0 } },
    { case: 'the decade is open', code: '031', on: '2026-11-25', age: { leastMonths: 12 * 35 + 9, mostMonths: 12 * 45 + 10 } },
  ])('$case', ({ code, on, age }) => {
    // Source: whole months by hand.
    expect(tyreAge(codeOf(code, day(on)), day(on))).toEqual(age);
  });

  test('a day made on is in the week of its own code, whatever the day', () => {
    fc.assert(fc.property(anyDate(day('1990-01-07'), TODAY), (made) => {
      const sunday = addDays(made, -new Date(made).getUTCDay());
      const week = Math.ceil(Number(new Date(sunday).getTime() - Date.UTC(yearOf(sunday), 0, 0)) / 86_400_000 / 7);
      const code = codeOf(`${String(week).padStart(2, '0')}${sunday.slice(2, 4)}`);
      expect(code.state === 'week' && code.week.from <= made && made <= code.week.to).toBe(true);
    }));
  });
});
