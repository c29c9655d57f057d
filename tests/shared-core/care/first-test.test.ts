import { describe, expect, test } from 'vitest';
import { day } from '../calendar/day.ts';
import { memoryHousehold, type MemoryHousehold } from '../contract/memory-household.ts';

function withPip(firstRegistered: string | null, today = '2024-01-10'): MemoryHousehold {
  const household = memoryHousehold().on(today);
  household.must('car.add', { id: 'pip', name: 'Pip', firstRegistered: firstRegistered === null ? null : day(firstRegistered) });
  return household;
}

describe('the first test', () => {
  test.each([
    { case: 'three years', registered: '2022-05-10', years: 3, first: '2025-05-10', source: 'reference 1c: Great Britain (seen)' },
    { case: 'four years', registered: '2022-05-10', years: 4, first: '2026-05-10', source: 'reference 1c: Northern Ireland (seen)' },
    { case: 'four years, then every two', registered: '2020-06-10', years: 4, first: '2024-06-10', source: 'reference 1d: 4-2-2 (seen)' },
    { case: 'five years from a leap day', registered: '2020-02-29', years: 5, first: '2025-02-28', source: 'by hand, clipped' },
    { case: 'four years from a leap day', registered: '2020-02-29', years: 4, first: '2024-02-29', source: 'by hand' },
  ])('$case from $registered: $first ($source)', ({ registered, years, first }) => {
    const { obligation } = withPip(registered).must('first-test.add', { car: 'Pip', years });
    expect(obligation).toMatchObject({ car: 'pip', kind: 'roadworthiness-test', lastValidDay: first, months: 12, keepsDate: true, noticeDays: 30 });
  });

  test('keeps its day when passed in the last month, and moves on by its own term', () => {
    const household = withPip('2020-06-10', '2024-05-20');
    const { obligation } = household.must('first-test.add', { car: 'pip', years: 4, months: 24 });
    expect(household.must('due.show', {}).cars[0]?.obligations).toMatchObject([{ on: '2024-06-10', opens: '2024-05-11', from: '2024-05-11' }]);
    expect(household.must('obligation.renew', { obligation: obligation.id }).obligation.lastValidDay).toBe('2026-06-10');
  });

  test('on its very day it can still be added', () => {
    expect(withPip('2021-01-10').must('first-test.add', { car: 'pip', years: 3 }).obligation.lastValidDay).toBe('2024-01-10');
  });

  test.each([
    { case: 'past', registered: '2021-01-09', request: { years: 3 }, code: 'first-test-past' },
    { case: 'without a first registration', registered: null, request: { years: 3 }, code: 'test-needs-registration' },
    { case: 'in half a year', registered: '2022-05-10', request: { years: 0.5 }, code: 'not-years' },
    { case: 'in eleven years', registered: '2022-05-10', request: { years: 11 }, code: 'not-years' },
    { case: 'of an unknown car', registered: '2022-05-10', request: { car: 'nobody', years: 3 }, code: 'unknown-car' },
  ])('$case is refused: $code', ({ registered, request, code }) => {
    const household = withPip(registered);
    expect(household.call('first-test.add', { car: 'pip', ...request } as never)).toMatchObject({ ok: false, refusal: { code } });
  });

  test('is not added beside another test; insurance is no test', () => {
    const household = withPip('2022-05-10');
    household.must('obligation.add', { car: 'pip', kind: 'insurance', lastValidDay: day('2024-12-31') });
    household.must('first-test.add', { car: 'pip', years: 3 });
    expect(household.call('first-test.add', { car: 'pip', years: 4 })).toMatchObject({ ok: false, refusal: { code: 'test-there' } });
  });
});

describe('changing an obligation', () => {
  test('touches only the fields given, and never its car', () => {
    const household = withPip('2022-05-10');
    const { obligation } = household.must('first-test.add', { car: 'pip', years: 3 });
    expect(household.must('obligation.change', { id: obligation.id, lastValidDay: day('2026-05-10'), months: 24 }).obligation).toEqual({ ...obligation, lastValidDay: '2026-05-10', months: 24 });
    expect(household.must('due.show', {}).cars[0]?.obligations[0]?.on).toBe('2026-05-10');
    expect(household.call('obligation.change', { id: obligation.id, car: 'other' } as never)).toMatchObject({ ok: false, refusal: { code: 'unknown-field' } });
    expect(household.call('obligation.change', { id: 'none' })).toMatchObject({ ok: false, refusal: { code: 'unknown-obligation' } });
    expect(household.call('obligation.change', { id: obligation.id, lastValidDay: '2026-02-30' } as never)).toMatchObject({ ok: false, refusal: { code: 'not-a-date' } });
  });
});
