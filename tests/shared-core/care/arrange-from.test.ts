import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { arrangeFrom } from '../../../shared-core/care/arrange-from.ts';
import { day } from '../calendar/day.ts';

test.each([
  { case: 'a forecast as it is', early: '2027-03-01', exact: [], from: '2027-03-01' },
  { case: 'an exact date less its notice', early: null, exact: ['2027-03-10'], from: '2027-02-24' },
  { case: 'the notice before the forecast', early: '2027-03-01', exact: ['2027-03-10'], from: '2027-02-24' },
  { case: 'the forecast before the notice', early: '2027-02-20', exact: ['2027-03-10', null], from: '2027-02-20' },
  { case: 'the earlier of two exact dates', early: null, exact: ['2027-03-10', '2027-03-09'], from: '2027-02-23' },
  { case: 'over the end of February in a leap year', early: null, exact: ['2028-03-10'], from: '2028-02-25' },
  { case: 'nothing', early: null, exact: [null], from: null },
])('$case: $from (by hand)', ({ early, exact, from }) => {
  const date = (text: string | null) => (text === null ? null : day(text));
  expect(arrangeFrom(14, date(early), ...exact.map(date))).toBe(from);
});

test('more notice is never later, and no date is passed over', () => {
  const someDay = fc.integer({ min: 0, max: 2000 }).map((days): LocalDate => addDays(day('2026-01-01'), days));
  fc.assert(fc.property(fc.nat(60), fc.nat(60), fc.option(someDay), fc.array(someDay, { minLength: 1, maxLength: 3 }), (notice, more, early, exact) => {
    const from = arrangeFrom(notice, early, ...exact) ?? day('2199-12-31');
    expect((arrangeFrom(notice + more, early, ...exact) ?? '') <= from).toBe(true);
    for (const date of exact) expect(from <= addDays(date, -notice)).toBe(true);
    if (early !== null) expect(from <= early).toBe(true);
  }));
});
